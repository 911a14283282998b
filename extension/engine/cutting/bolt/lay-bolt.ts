import { budgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type { BoltInstance, CutAnswer, Report } from '../instance.ts';
import { noRoll, rollAnswer } from '../roll-answer.ts';
import { unplacedParts } from '../unplaced.ts';
import { clothOf, clothPlacement, fine, whole } from './cloth.ts';
import { leastLength } from './least-length.ts';
import { searchBolt } from './search.ts';
import type { Roll } from './skyline.ts';

/**
 * Lays rectangles along a roll of cloth so that least of it is taken: a skyline filled from a list,
 * and the list bettered by swaps and moves under late acceptance. The stock's length is the unit the
 * cloth is sold by; `trim` is the selvage of both edges.
 */
export function layBolt(instance: BoltInstance, report?: Report): CutAnswer {
  const { kerf = 0, trim = 0, repeat, effort, seed } = instance;
  const stock = instance.stocks[0] ?? noRoll;
  const roll: Roll = {
    width: whole(stock.width - 2 * trim + kerf),
    stepAlong: Math.max(1, whole(repeat?.along ?? 0)),
    stepAcross: Math.max(1, whole(repeat?.across ?? 0)),
  };
  const cloth = clothOf(instance, roll);
  const bound = leastLength(cloth.panels, roll);
  const chance = chanceFrom(seed ?? 1);
  // A step lays the whole list anew, which costs more than a look at one place.
  const budget = budgetOf(effort, cloth.panels.length) / 4;
  const laid = searchBolt({ roll, panels: cloth.panels, bound, budget, chance, report });
  const placements = laid.panels.flatMap((one) => {
    const owner = cloth.owners[one.panel.index];
    return owner === undefined ? [] : [clothPlacement(one, owner, { stock: stock.id, trim })];
  });
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
