// Run as a process of its own by the tests of the embedded server: starts it, says so, stops at the end of its input.
import { startEmbedded } from '#libs/db';

const [dir = ''] = process.argv.slice(2);
const server = await startEmbedded({ dir, settings: { fsync: 'off' } });
process.stdout.write(`${JSON.stringify({ adopted: server.adopted, place: server.place, connection: server.connection })}\n`);
process.stdin.resume().on('end', () => {
  void server.release().then((released) => process.stdout.write(`${JSON.stringify({ released })}\n`));
});
