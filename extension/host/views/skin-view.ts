import { showQuantity, type PanelSkin, type PicturedPanel } from '../../engine/index.ts';
import type { SkinScale, SkinView } from '../../protocol/panel-view.ts';

const lengthDimension = { length: 1, mass: 0, time: 0, temperature: 0, money: 0 };

function tenths(mm: number): number {
  return Math.round(mm * 10) / 10 + 0;
}

/** Figure that all but one in so many stay below: a few slivers do not stretch the colours. */
const outliers = 100;

function mostOf(values: readonly number[]): number {
  const sorted = values.toSorted((one, two) => one - two);
  return sorted[Math.max(0, Math.ceil(sorted.length * (1 - 1 / outliers)) - 1)] ?? 0;
}

function heightScale({ heights }: PanelSkin, { settings }: PicturedPanel): SkinScale {
  const most = heights.reduce((highest, one) => Math.max(highest, one), 0);
  const ticks = [0, 0.5, 1].map(
    (share) => showQuantity({ base: share * most, dimension: lengthDimension }, settings).text,
  );
  return {
    key: 'height',
    label: 'Height over the base',
    values: heights.map(tenths),
    least: 0,
    most,
    ticks,
  };
}

function stretchScale({ stretch, triangles }: PanelSkin): SkinScale {
  const seen = [...new Set(triangles)].map((node) => stretch[node] ?? 1);
  const most = Math.max(1.01, mostOf(seen));
  const ticks = [0, 0.5, 1].map((share) => `${((most - 1) * share * 100).toFixed(0)} %`);
  return {
    key: 'stretch',
    label: 'Stretch, at least',
    values: stretch.map((one) => Math.round(one * 1000) / 1000),
    least: 1,
    most,
    ticks: [ticks[0] ?? '', ticks[1] ?? '', `${ticks[2] ?? ''} and more`],
  };
}

/** A skin as the webview turns and colours it. */
export function skinView(panel: PicturedPanel, skin: PanelSkin): SkinView {
  return {
    points: skin.points.map(tenths),
    triangles: skin.triangles,
    edges: skin.edges.map((edge) => edge.map(tenths)),
    scales: [heightScale(skin, panel), stretchScale(skin)],
  };
}
