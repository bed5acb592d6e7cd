/** The little server: only its folder, only this machine, the next port when one is taken. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../scripts/serve.mjs';

let folder: string;
let server: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenrun-serve-'));
  mkdirSync(join(folder, 'site', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not to be read');
  writeFileSync(join(folder, 'site', 'index.html'), '<p>here</p>');
  writeFileSync(join(folder, 'site', 'assets', 'a b.js'), '1');
  server = await serve(join(folder, 'site'));
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

/** Sends the path as it is: `fetch` would tidy it up. */
function get(
  path: string,
  options: { method?: string; host?: string } = {},
): Promise<{ status: number; type: string; text: string }> {
  const { hostname, port } = new URL(server.url);
  const headers = { host: options.host ?? `${hostname}:${port}` };
  return new Promise((done, failed) => {
    request({ hostname, port, path, method: options.method ?? 'GET', headers }, (response) => {
      let text = '';
      response.on('data', (chunk) => (text += chunk));
      response.on('end', () =>
        done({ status: response.statusCode!, type: response.headers['content-type'] ?? '', text }),
      );
    })
      .on('error', failed)
      .end();
  });
}

test('serves its files with their types', async () => {
  expect(server.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
  expect(await get('/')).toEqual({ status: 200, type: 'text/html; charset=utf-8', text: '<p>here</p>' });
  expect(await get('/assets/a%20b.js?x=1')).toEqual({ status: 200, type: 'text/javascript; charset=utf-8', text: '1' });
  expect((await get('/', { method: 'HEAD' })).text).toBe('');
});

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/assets/../../secret.txt',
  '/..%5csecret.txt',
  '/assets',
  '/none',
  '/%00',
  '/%',
])('%s is not there', async (path) => {
  expect((await get(path)).status).toBe(404);
});

test('only reads, and only for this machine', async () => {
  expect((await get('/', { method: 'POST' })).status).toBe(405);
  expect((await get('/', { host: 'elsewhere.example' })).status).toBe(403);
});

test('a taken port is passed over', async () => {
  const port = Number(new URL(server.url).port);
  const second = await serve(join(folder, 'site'), port);
  const found = Number(new URL(second.url).port);
  await second.close();
  expect(found).toBeGreaterThan(port);
});
