import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../dist/web', import.meta.url));
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
};

/** Serves the built page as any plain file server would, from a folder, and nothing else. */
export async function servePage(
  root = ROOT,
): Promise<{ readonly address: string; readonly close: () => void }> {
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://page').pathname));
    const file = join(root, path === '/' ? 'index.html' : path);
    try {
      if (!file.startsWith(root)) throw new Error('outside the page');
      const body = await readFile(file);
      response
        .writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' })
        .end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the test server has no port');
  return {
    address: `http://127.0.0.1:${address.port}/`,
    close: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}
