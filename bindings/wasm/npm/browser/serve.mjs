// A server on this machine alone, and a Chromium that reaches nothing else.
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { mkdtempSync } from "node:fs";
import { extname, join, normalize } from "node:path";
import { chromium } from "playwright-core";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".mjs": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".webmanifest": "application/manifest+json",
};

/** Serves folders by the first part of the path; "" is the rest. Gives the address and what closes it. */
export async function serve(folders, headers = {}) {
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://localhost").pathname));
    const [, first, ...rest] = path.split("/");
    const file = first in folders ? join(folders[first], ...rest) : join(folders[""] ?? "", path);
    try {
      const body = await readFile(path.endsWith("/") ? join(file, "index.html") : file);
      response.writeHead(200, { ...headers, "content-type": TYPES[extname(file)] ?? (path.endsWith("/") ? TYPES[".html"] : "text/plain; charset=utf-8") });
      response.end(body);
    } catch {
      response.writeHead(404);
      response.end();
    }
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  return { address: `http://127.0.0.1:${server.address().port}`, close: () => server.close() };
}

const CHROMIUM = {
  executablePath: process.env.HILUM_CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

/** A Chromium with an empty profile. */
export function browser(options = {}) {
  return chromium.launchPersistentContext(mkdtempSync(join(tmpdir(), "hilum-chromium-")), { ...CHROMIUM, ...options });
}

/** A Chromium for many profiles, each of which `newContext` makes. */
export const launch = () => chromium.launch(CHROMIUM);
