import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import type { Connection } from '#libs/db';

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (typeof address !== 'object' || address === null) throw new Error('No port was given');
  return address.port;
}

/** The built server as a process of its own, that can be killed as a power cut would and started again on its port. */
export class ServerChild {
  private child: ChildProcess | undefined;

  private constructor(
    private readonly databaseUrl: string,
    private readonly port: number,
  ) {}

  static async start({ host, port, user, password, database }: Connection): Promise<ServerChild> {
    const login = `${encodeURIComponent(user ?? '')}:${encodeURIComponent(typeof password === 'string' ? password : '')}`;
    const url = `postgresql://${login}@localhost:${port ?? 5432}/${database ?? ''}?host=${encodeURIComponent(host ?? '')}`;
    const server = new ServerChild(url, await freePort());
    await server.again();
    return server;
  }

  get base(): string {
    return `http://localhost:${this.port}`;
  }

  async again(): Promise<void> {
    const env = {
      ...process.env,
      PORT: String(this.port),
      HOST: '127.0.0.1',
      DATABASE_URL: this.databaseUrl,
      DEMO: '0',
      NODE_ENV: 'production',
    };
    const child = spawn(process.execPath, ['dist/apps/server/src/main.js'], { env, stdio: ['ignore', 'pipe', 'pipe'] });
    this.child = child;
    let said = '';
    await new Promise<void>((resolve, reject) => {
      const hear = (part: Buffer): void => {
        said += part.toString();
        if (said.includes('Runwarm is open at')) resolve();
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      child.once('exit', (code) => reject(new Error(`The server ended with ${code}: ${said}`)));
    });
  }

  /** As by a power cut: nothing of it is told. */
  async kill(): Promise<void> {
    const { child } = this;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((resolve) => child.once('close', resolve));
    child.kill('SIGKILL');
    await ended;
  }
}
