export function bundleTypeScript(name: string, source: string): Promise<string>;
export function importTypeScript(name: string, source: string): Promise<Record<string, unknown>>;
