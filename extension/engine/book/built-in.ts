import { readFile } from '../job/read-file.ts';
import type { FileReading } from '../job/source.ts';
import constants from './built-in/constants.toml';
import demoBook from './built-in/demo-book.toml';
import finishKinds from './built-in/kinds-finish.toml';
import fittingKinds from './built-in/kinds-fittings.toml';
import shopKinds from './built-in/kinds-shop.toml';
import skinKinds from './built-in/kinds-skin.toml';
import structureKinds from './built-in/kinds-structure.toml';
import tableKinds from './built-in/kinds-tables.toml';
import workKinds from './built-in/kinds-work.toml';
import kits from './built-in/kits.toml';
import fittingKits from './built-in/kits-fittings.toml';

export interface BuiltIn {
  /** Kinds, constants and kits: under every book. */
  readonly habits: readonly FileReading[];
  /** Materials with invented prices: prices only where no book is given. */
  readonly demo: FileReading;
}

/** Reads what comes with the program. */
export function readBuiltIn(): BuiltIn {
  const habits = [
    tableKinds,
    structureKinds,
    skinKinds,
    finishKinds,
    fittingKinds,
    shopKinds,
    workKinds,
    constants,
    kits,
    fittingKits,
  ];
  return { habits: habits.map((text) => readFile(text)), demo: readFile(demoBook) };
}
