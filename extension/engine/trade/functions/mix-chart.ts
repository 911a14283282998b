import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { failed, ok } from '../../result.ts';
import { plain, temperature, temperatureDifference } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { missing, numberIn, shownWith } from '../arguments.ts';
import { tradeProblem } from '../trade-problems.ts';

const name = 'MIX.CHART';

/** Name of the shop book's chart of catalyst by temperature. */
const chartName = 'catalyst';

const temperatureParameter: Parameter = {
  name: 'temperature',
  help: 'Temperature of shop and resin.',
  type: { kind: 'quantity', dimensions: [temperature] },
};

/** MIX.CHART. Bands are closed below and open above. */
export const mixChart: FunctionEntry = {
  name,
  group: 'resin',
  help: 'Share of catalyst for a temperature, from the shop book’s chart “catalyst”.',
  parameters: [temperatureParameter],
  result: { kind: 'quantity', dimension: plain },
  example: { formula: '=MIX.CHART(18degC)', shows: '0.02' },
  source: 'the shop book; the demo book’s chart is East Coast Fibreglass’s',
  run: ([given], context) => {
    const celsius = numberIn(given);
    if (celsius === undefined) return failed(missing(name, temperatureParameter));
    const bands = context.chart(chartName);
    const band = bands.find(
      ({ from, to }) => comparedValues(celsius, from) >= 0 && comparedValues(celsius, to) < 0,
    );
    if (band !== undefined) return ok({ kind: 'quantity', base: band.value, dimension: plain });
    if (bands.length === 0) return failed(tradeProblem('chart-empty', { chart: chartName }));
    const shown = (base: number): string => shownWith(context)(base, temperature);
    const from = Math.min(...bands.map((one) => one.from));
    const to = Math.max(...bands.map((one) => one.to));
    const range =
      celsius < from
        ? `it begins at ${shown(from)}`
        : celsius >= to
          ? `it ends below ${shown(to)}`
          : 'its bands leave a gap there';
    return failed(
      tradeProblem('chart-outside', { chart: chartName, temperature: shown(celsius), range }),
    );
  },
};

/**
 * MIX.BORDER: how far a temperature is from the nearest end of a band, in degrees. Where the chart has
 * no bands there is no border to be near to.
 */
export const mixBorder: FunctionEntry = {
  name: 'MIX.BORDER',
  group: 'resin',
  help: 'How far a temperature is from the nearest border of the shop book’s chart “catalyst”.',
  parameters: [temperatureParameter],
  result: { kind: 'quantity', dimension: temperatureDifference },
  example: { formula: '=MIX.BORDER(19degC)', shows: '1.8 dF' },
  source: 'definition; the demo book’s chart is East Coast Fibreglass’s',
  run: ([given], context) => {
    const celsius = numberIn(given);
    if (celsius === undefined) return failed(missing('MIX.BORDER', temperatureParameter));
    const borders = context.chart(chartName).flatMap(({ from, to }) => [from, to]);
    if (borders.length === 0) return failed(tradeProblem('chart-empty', { chart: chartName }));
    const base = Math.min(...borders.map((border) => Math.abs(border - celsius)));
    return ok({ kind: 'quantity', base, dimension: temperatureDifference });
  },
};
