import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer, type RequestListener, type Server, type ServerResponse } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { join, normalize, sep } from "node:path";
import { headersOf } from "./headers.ts";

export interface Serving {
  readonly address: string;
  stop(): Promise<void>;
}

/** What https on this machine needs. */
export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

/** Serves a folder to this machine alone, on the port or the next free one; port 0 takes any free one. */
export async function serve(directory: string, port: number, certificate?: Certificate): Promise<Serving> {
  const respond: RequestListener = (request, response) => {
    answer(directory, request.url ?? "/", response).catch(() => {
      response.writeHead(500).end();
    });
  };
  const server = certificate === undefined ? createServer(respond) : createSecureServer({ ...certificate }, respond);
  const taken = await listen(server, port);
  return {
    address: `${certificate === undefined ? "http" : "https"}://localhost:${taken}/`,
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => {
          resolve();
        });
      }),
  };
}

async function answer(directory: string, url: string, response: ServerResponse): Promise<void> {
  const file = fileFor(directory, url);
  const found = file === null ? null : await stat(file).catch(() => null);
  if (file === null || !found?.isFile()) {
    response.writeHead(404, { "content-type": "text/plain; charset=utf-8" }).end("There is no such file.");
    return;
  }
  response.writeHead(200, { ...headersOf(file), "content-length": found.size });
  createReadStream(file).pipe(response);
}

/** The file an address names, or null when it points outside the folder. */
function fileFor(directory: string, url: string): string | null {
  let path: string;
  try {
    path = decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return null;
  }
  const root = normalize(`${directory}${sep}`);
  const file = join(root, path.endsWith("/") ? `${path}index.html` : path);
  return file.startsWith(root) ? file : null;
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE" && port !== 0 && port < 65_535) resolve(listen(server, port + 1));
      else reject(error);
    });
    server.listen(port, "localhost", () => {
      server.removeAllListeners("error");
      const address = server.address();
      resolve(typeof address === "object" && address ? address.port : port);
    });
  });
}
