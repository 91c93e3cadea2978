/** `npm start`: from a fresh clone to a served page. The address is the only line on stdout. */
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

import { bundle } from './bundle.mjs';
import { ensurePacks } from './demo-pack.mjs';
import { ensureInstalled } from './install.mjs';
import { PAGE, ensurePage } from './page.mjs';
import { EntryError, ROOT, endWithNpm, enter } from './project.mjs';

const DEFAULT_PORT = 8300;
const HOST = process.env.HOST || '127.0.0.1';

await enter(async () => {
  endWithNpm();
  const port = readPort(process.env.PORT);
  const packs = readPacks(process.env.PACKS);
  await ensureFree(port, HOST);
  await ensureInstalled();
  await ensurePage();
  await ensurePacks(packs);
  const { serveSite } = await import(pathToFileURL(await bundle('data-scripts/serve/site-server.ts')).href);
  const archives = readArchives(process.env.ARCHIVES);
  const site = await serveSite({ page: PAGE, packs, archives, port, host: HOST }).catch((error) => {
    throw explained(error, port);
  });
  console.log(site.url);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => site.close().then(() => process.exit(0)));
  }
});

/** Says at once that the port can't be had, before minutes go into building. */
function ensureFree(port, host) {
  return new Promise((free, taken) => {
    const probe = createServer();
    probe.once('error', (error) => taken(explained(error, port)));
    probe.listen(port, host, () => probe.close(free));
  });
}

function readPort(text) {
  if (!text) return DEFAULT_PORT;
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65535) return port;
  throw new EntryError(`PORT is "${text}", but a port is a whole number from 0 to 65535.`);
}

function readPacks(text) {
  const packs = resolve(ROOT, text || 'packs');
  if (existsSync(packs) && !statSync(packs).isDirectory()) {
    throw new EntryError(`PACKS is ${packs}, which is not a folder.`);
  }
  try {
    mkdirSync(packs, { recursive: true });
  } catch (error) {
    throw new EntryError(`The folder ${packs} for packs can't be made (${error.code}).`);
  }
  return packs;
}

/** Base addresses of the archives that records may be fetched from, by commas; undefined: the public one. */
function readArchives(text) {
  return text?.split(',').flatMap((address) => address.trim() || []);
}

function explained(error, port) {
  if (error.name === 'InputError') return new EntryError(`ARCHIVES: ${error.message}.`);
  if (error.code === 'EADDRINUSE') {
    return new EntryError(`Port ${port} is taken by another program: choose one with PORT=number npm start.`);
  }
  if (error.code === 'EACCES') return new EntryError(`Port ${port} may not be opened by this user.`);
  if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND') {
    return new EntryError(`HOST is "${HOST}", which is not an address of this machine.`);
  }
  return error;
}
