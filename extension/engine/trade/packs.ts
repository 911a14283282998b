import { roundedTo } from '../units/same-value.ts';

/**
 * Packs that cover a need; `slack` is the share by which a pack may be asked to give more than it holds.
 *
 * @source definition
 */
export function packCount(need: number, pack: number, slack: number): number {
  return roundedTo(need / (pack * (1 + slack)), 1, 'up');
}
