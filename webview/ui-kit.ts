import { registerControls } from './controls.ts';

registerControls();
