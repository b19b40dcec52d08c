/** Made by the build out of the server's own views. */
declare module 'views-for-browser' {
  export function draw(name: 'card' | 'cars' | 'lock' | 'sent', view: object): string;
}
