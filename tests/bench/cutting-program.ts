/** What the bench of layouts measures, bundled as the worker's program is: one file, calls not looked up. */
export { layOut } from '../../extension/engine/cutting/lay-out.ts';
