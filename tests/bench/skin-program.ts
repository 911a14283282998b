/** What the bench of skins measures, bundled as the worker's program is: one file, calls not looked up. */
export { closedFigures } from '../../extension/engine/skin/closed-form.ts';
export { flattened } from '../../extension/engine/skin/flatten.ts';
export { panelFaults } from '../../extension/engine/skin/panel-problems.ts';
export { restOver } from '../../extension/engine/skin/rest.ts';
export { settleSkin } from '../../extension/engine/skin/settle.ts';
