// Imported before anything else; old releases of Node must be able to read this file.
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Runwarm needs Node.js 20.19 or newer; this is ${process.versions.node}. Install a current release from https://nodejs.org`,
  );
  process.exit(1);
}
