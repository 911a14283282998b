import { actuals, rates } from './actuals.ts';
import type { FiguresRequest } from './figures-arguments.ts';
import { compareJobOptions } from './options.ts';
import type { ExitCode, World } from './world.ts';
import { xlsx } from './xlsx.ts';

type Doing = {
  readonly [Command in FiguresRequest['command']]: (
    request: Extract<FiguresRequest, { command: Command }>,
    world: World,
  ) => ExitCode;
};

/** Carries out options, actuals and workbooks. */
export const figuresDoing: Doing = { options: compareJobOptions, actuals, rates, xlsx };
