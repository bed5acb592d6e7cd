/** Serves a folder of files on the loopback address alone, for the start script, browser tests and screenshots. */
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.stl': 'model/stl',
  '.txt': 'text/plain; charset=utf-8',
};

/** Nothing of another origin is on the page, so it may share memory with its workers: large scans lie there once. */
const ISOLATED = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

const HOST = '127.0.0.1';
const PORTS_TRIED = 20;

/**
 * @param {string} folder
 * @param {number} port the first to try; the next ones follow while it is taken; 0 is any free one
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export async function serve(folder, port = 0) {
  const root = resolve(folder);
  const server = createServer((request, response) => answer(root, request, response));
  for (let tried = 0; ; tried++) {
    try {
      await listen(server, port === 0 ? 0 : port + tried);
      break;
    } catch (error) {
      const goOn = error.code === 'EADDRINUSE' && tried < PORTS_TRIED && port + tried < 65535;
      if (!goOn) throw error;
    }
  }
  const close = () =>
    new Promise((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { url: `http://${HOST}:${server.address().port}/`, close };
}

function listen(server, port) {
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen(port, HOST, () => {
      server.off('error', failed);
      done();
    });
  });
}

function answer(root, request, response) {
  const end = (status, text) => {
    response.writeHead(status, { 'Content-Type': TYPES['.txt'] });
    response.end(text);
  };
  // A page elsewhere that gets its own name to point here must not be served the user's work.
  if (!/^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/.test(request.headers.host ?? ''))
    return end(403, 'Only for this machine.');
  if (request.method !== 'GET' && request.method !== 'HEAD') return end(405, 'Only to be read.');
  const file = fileFor(root, request.url ?? '/');
  if (file === null) return end(404, 'There is no such file.');
  response.writeHead(200, {
    'Content-Type': TYPES[extname(file.path).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': file.size,
    'X-Content-Type-Options': 'nosniff',
    ...ISOLATED,
    // Built files under assets/ carry their hash in the name; everything else may change with the next build.
    'Cache-Control': file.path.includes(`${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache',
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file.path)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** The file a request means; never one outside the root. */
function fileFor(root, url) {
  let path;
  try {
    path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return null;
  }
  if (path.includes('\0')) return null;
  const full = resolve(join(root, path.endsWith('/') ? `${path}index.html` : path));
  if (!full.startsWith(root + sep)) return null;
  const stat = statSync(full, { throwIfNoEntry: false });
  return stat?.isFile() ? { path: full, size: stat.size } : null;
}
