// Serves dist/ the way a static host would: right types, compressed copies, no surprises in caching.
//   node scripts/serve.mjs [--port 8080] [--host localhost] [--base /some/path/] [--dir dist] [--strict-port]

import fs from "node:fs";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { ENCODINGS, hasCopies } from "./shipped.mjs";

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), "..");

const { values: options } = parseArgs({
  options: {
    port: { type: "string", default: "8080" },
    host: { type: "string", default: "localhost" },
    base: { type: "string", default: "/" },
    dir: { type: "string", default: path.join(root, "dist") },
    "strict-port": { type: "boolean", default: false },
    "help-phones": { type: "boolean", default: false },
  },
});

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".json": "application/json",
  ".txt": "text/plain; charset=utf-8",
};

const folder = path.resolve(options.dir);
const base = `/${options.base.split("/").filter(Boolean).join("/")}/`.replace("//", "/");

function send(response, status, headers = {}) {
  response.writeHead(status, { "Cache-Control": "no-cache", "Content-Type": "text/plain", ...headers });
  response.end(http.STATUS_CODES[status]);
}

const fileAt = (file) => {
  const stat = fs.statSync(file, { throwIfNoEntry: false });
  return stat?.isFile() ? { file, stat } : null;
};

// The file behind a request, or null. Never one outside the served folder.
function fileFor(pathname) {
  let name;
  try {
    name = decodeURIComponent(pathname.slice(base.length));
  } catch {
    return null;
  }
  if (name.includes("\0")) {
    return null;
  }
  const file = path.resolve(folder, name === "" || name.endsWith("/") ? `./${name}index.html` : `./${name}`);
  return file.startsWith(folder + path.sep) ? fileAt(file) : null;
}

// The encodings that a client takes, with their weights ("br;q=0.5"); 0 means "not this one".
function accepted(header = "") {
  return new Map(
    header.split(",").map((part) => {
      const [name, weight] = part.toLowerCase().split(";").map((word) => word.trim());
      return [name, weight?.startsWith("q=") ? Number(weight.slice(2)) : 1];
    }),
  );
}

// The smallest copy that the client takes, or null.
function copyFor(file, header) {
  const taken = accepted(header);
  for (const { name, ending } of ENCODINGS) {
    const copy = (taken.get(name) ?? taken.get("*") ?? 0) > 0 && fileAt(file + ending);
    if (copy) {
      return { ...copy, encoding: name };
    }
  }
  return null;
}

const server = http.createServer((request, response) => {
  // By hand: what a client may send here is not always a URL that can be parsed.
  const [pathname, query] = request.url.split("?", 2);
  if (request.method !== "GET" && request.method !== "HEAD") {
    return send(response, 405, { Allow: "GET, HEAD" });
  }
  if (`${pathname}/` === base) {
    return send(response, 301, { Location: query === undefined ? base : `${base}?${query}` });
  }
  const found = pathname.startsWith(base) ? fileFor(pathname) : null;
  if (!found) {
    return send(response, 404);
  }
  const compressible = hasCopies(found.file);
  const copy = compressible ? copyFor(found.file, request.headers["accept-encoding"]) : null;
  const { file, stat } = copy ?? found;
  const etag = `"${[stat.size.toString(16), Math.round(stat.mtimeMs).toString(16), copy?.encoding ?? "plain"].join("-")}"`;
  const headers = {
    // Always ask again: a new build must be seen at once, and an unchanged file costs one short answer.
    "Cache-Control": "no-cache",
    "Content-Type": TYPES[path.extname(found.file)] ?? "application/octet-stream",
    ETag: etag,
    "X-Content-Type-Options": "nosniff",
    ...(compressible && { Vary: "Accept-Encoding" }),
    ...(copy && { "Content-Encoding": copy.encoding }),
  };
  if (request.headers["if-none-match"] === etag) {
    response.writeHead(304, headers);
    return response.end();
  }
  response.writeHead(200, { ...headers, "Content-Length": stat.size });
  if (request.method === "HEAD") {
    return response.end();
  }
  fs.createReadStream(file)
    .on("error", () => response.destroy())
    .pipe(response);
});

function phoneHelp(port) {
  const lines = [
    "",
    "On a phone (offline use and installing need https, or localhost):",
    `  Android by cable   adb reverse tcp:${port} tcp:${port}   then open http://localhost:${port}${base} on the phone`,
    "  any phone          copy dist/ to any static host with https; a sub-path works too",
  ];
  const addresses = Object.values(os.networkInterfaces())
    .flat()
    .filter((net) => net.family === "IPv4" && !net.internal)
    .map((net) => `http://${net.address}:${port}${base}`);
  lines.push(
    options.host === "localhost"
      ? "  same network       ./scripts/run --lan   only for a look: plain http has no offline use, no installing, no passcode"
      : `  same network       ${addresses.join("  ")}   only for a look: plain http has no offline use, no installing, no passcode`,
  );
  lines.push("", "Ctrl-C ends the server.");
  return lines.join("\n");
}

let port = Number(options.port);
const last = port + 50;

server.on("error", (error) => {
  if (error.code === "EADDRINUSE" && !options["strict-port"] && port !== 0 && port < last) {
    port += 1;
    return server.listen(port, host);
  }
  console.error(`Can't serve on port ${port}: ${error.message}. Choose another one with --port.`);
  process.exit(1);
});

// By number, because "localhost" alone may mean only its IPv6 form here and only IPv4 to a phone's cable.
const host = options.host === "localhost" ? "127.0.0.1" : options.host;

if (!fs.existsSync(path.join(folder, "index.html"))) {
  console.error(`There is no index.html in ${folder}. Run ./scripts/build first.`);
  process.exit(1);
}

server.listen(port, host, () => {
  port = server.address().port;
  console.log(`Penlight is at http://localhost:${port}${base}`);
  if (options["help-phones"]) {
    console.log(phoneHelp(port));
  }
});

for (const signal of ["SIGINT", "SIGTERM"]) {
  process.on(signal, () => process.exit(0));
}
