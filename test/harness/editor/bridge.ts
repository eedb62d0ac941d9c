// Lets tests inside the editor act as its user outside: a web server on localhost that does on the page what it is sent.
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import type { Page } from 'playwright-core';
import { atEnd } from './cleanup.ts';
import { act, type Action } from './page.ts';

/** What comes back: the thing seen, or why it could not be done. */
export type Answer = { seen: unknown } | { error: string };

/** The address to post actions to, unguessable, so that no other program on the machine drives the page. */
export async function openBridge(page: Page): Promise<string> {
  const path = `/${randomUUID()}`;
  const server = createServer((request, response) => {
    if (request.url !== path) return response.writeHead(404).end();
    // A web extension asks from another origin; the address is what keeps others out.
    response.setHeader('access-control-allow-origin', '*');
    return void answer(request, page).then((result) => response.end(JSON.stringify(result)));
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  atEnd(() => Promise.resolve(server.closeAllConnections()));
  return `http://127.0.0.1:${String((server.address() as AddressInfo).port)}${path}`;
}

async function answer(request: IncomingMessage, page: Page): Promise<Answer> {
  try {
    return { seen: await act(page, JSON.parse(await text(request)) as Action) };
  } catch (error) {
    return { error: error instanceof Error ? error.message : String(error) };
  }
}
