export interface Connection {
  host: string;
  port: number;
  user: string;
  password: string;
  database: string;
  /** Always said, so that PGSSLMODE of the environment has no say. */
  ssl: boolean | { rejectUnauthorized: boolean };
}
