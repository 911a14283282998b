import { bookOutMaterials } from './book-out.ts';
import { importPrices } from './book-prices.ts';
import { freezePrices } from './freeze.ts';
import { newJobFile, templatesJson, templatesReport } from './new.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import { substitute } from './substitute.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

type Doing = {
  readonly [Command in ReuseRequest['command']]: (
    request: Extract<ReuseRequest, { command: Command }>,
    world: World,
  ) => ExitCode;
};

/** Carries out the commands of templates, shop books and stock. */
export const reuseDoing: Doing = {
  templates: ({ json }, world) => {
    world.out(json ? `${JSON.stringify(templatesJson(), undefined, 2)}\n` : templatesReport());
    return exitCodes.fine;
  },
  new: newJobFile,
  freeze: freezePrices,
  prices: importPrices,
  substitute,
  bookout: bookOutMaterials,
};
