/** What the bench of the engine measures. */
export { openSession } from '../../extension/engine/index.ts';
