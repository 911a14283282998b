import { createRequire } from 'node:module';

/**
 * The workbench's server, in a process of its own because it prints each request. Told what to serve by
 * its first argument; says `ready` to its parent, and ends with it.
 */
/** @type {{ hosts: string, options: object }} */
const { hosts, options } = JSON.parse(process.argv[2] ?? '{}');
/** @type {{ open: (options: object) => Promise<unknown> }} */
const { open } = createRequire(hosts)('@vscode/test-web');

await open(options);
process.on('disconnect', () => process.exit());
process.send?.('ready');
