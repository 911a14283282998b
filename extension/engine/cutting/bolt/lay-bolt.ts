import { budgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type { BoltInstance, CutAnswer, Report } from '../instance.ts';
import { noRoll, rollAnswer } from '../roll-answer.ts';
import { unplacedParts } from '../unplaced.ts';
import { clothOf, clothPlacement, fine, whole } from './cloth.ts';
import { heldPanels } from './held-panels.ts';
import { leastLength } from './least-length.ts';
import { searchBolt } from './search.ts';
import type { Roll } from './skyline.ts';

/**
 * Lays rectangles along a roll of cloth so that least of it is taken: a skyline filled from a list,
 * and the list bettered by swaps and moves under late acceptance. The stock's length is the unit the
 * cloth is sold by; `trim` is the selvage of both edges. Parts that are held stay where they lie, and the
 * rest is laid into the rooms before them and behind their edge.
 */
export function layBolt(instance: BoltInstance, report?: Report): CutAnswer {
  const { kerf = 0, trim = 0, effort, seed } = instance;
  const stock = instance.stocks[0] ?? noRoll;
  const kept = heldPanels(instance, rollOf(instance).width);
  const roll: Roll = { ...rollOf(instance), ...(kept && { held: kept.held }) };
  const cloth = clothOf(kept?.instance ?? instance, roll);
  // No layout of the same parts is shorter, held or not.
  const all = kept === undefined ? cloth : clothOf(instance, roll);
  const bound = leastLength(all.panels, roll);
  const chance = chanceFrom(seed ?? 1);
  // A step lays the whole list anew, which costs more than a look at one place.
  const budget = budgetOf(effort, cloth.panels.length) / 4;
  const laid = searchBolt({ roll, panels: cloth.panels, bound, budget, chance, report });
  const fresh = laid.panels.flatMap((one) => {
    const owner = cloth.owners[one.panel.index];
    return owner === undefined ? [] : [clothPlacement(one, owner, { stock: stock.id, trim })];
  });
  const placements = [...(kept?.placements ?? []), ...fresh];
  const mm = (length: number): number => Math.max(0, length / fine - kerf);
  const length = mm(laid.length);
  return rollAnswer({
    stock,
    length,
    leastLength: mm(bound),
    area: placements.reduce((sum, one) => sum + one.length * one.width, 0),
    placements,
    unplaced: unplacedParts(cloth.unfit),
  });
}

function rollOf({ stocks, kerf = 0, trim = 0, repeat }: BoltInstance): Roll {
  const { width } = stocks[0] ?? noRoll;
  return {
    width: whole(width - 2 * trim + kerf),
    stepAlong: Math.max(1, whole(repeat?.along ?? 0)),
    stepAcross: Math.max(1, whole(repeat?.across ?? 0)),
  };
}
