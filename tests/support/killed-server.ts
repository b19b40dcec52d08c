import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import net from 'node:net';
import type { Connection } from '#libs/db';

const READY_MS = 60_000;

/** The built server as a process of its own, that a test can kill as a power cut would, and start again on the same database. */
export class KilledServer {
  private process: ChildProcess | undefined;
  private constructor(
    private readonly url: string,
    private readonly port: number,
  ) {}

  static async on(connection: Connection): Promise<KilledServer> {
    const { user, password, host, port, database } = connection;
    const place = host.startsWith('/') ? `localhost:${port}/${database}?host=${encodeURIComponent(host)}` : `${host}:${port}/${database}`;
    const server = new KilledServer(`postgresql://${encodeURIComponent(user)}:${encodeURIComponent(password)}@${place}`, await freePort());
    await server.start();
    return server;
  }

  get base(): string {
    return `http://127.0.0.1:${this.port}`;
  }

  /** Killed without a word, mid-request or not, and started again. */
  async killAndStart(): Promise<void> {
    await this.kill();
    await this.start();
  }

  async kill(): Promise<void> {
    const running = this.process;
    if (running?.exitCode !== null || running.signalCode !== null) return;
    const ended = once(running, 'exit');
    running.kill('SIGKILL');
    await ended;
  }

  private async start(): Promise<void> {
    this.process = spawn(process.execPath, ['dist/apps/server/src/main.js'], {
      env: { ...process.env, DATABASE_URL: this.url, PORT: String(this.port), DEMO: '0', NODE_OPTIONS: '' },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const until = Date.now() + READY_MS;
    while (Date.now() < until) {
      const answer = await fetch(`${this.base}/api/v1/health`).catch(() => undefined);
      if (answer?.ok === true) return;
      if (this.process.exitCode !== null) throw new Error(`The server ended with ${this.process.exitCode} instead of starting`);
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error('The server did not become ready');
  }
}

async function freePort(): Promise<number> {
  const probe = net.createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as net.AddressInfo;
  probe.close();
  await once(probe, 'close');
  return port;
}
