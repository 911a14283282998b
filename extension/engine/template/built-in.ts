import doorPair from './built-in/door-pair.toml';
import kickPanels from './built-in/kick-panels.toml';
import reCover from './built-in/re-cover.toml';
import deckPods from './built-in/rear-deck-pods.toml';
import quarterPair from './built-in/rear-quarter-pair.toml';

/** The texts of the templates that come with the program. */
export const builtInTemplates: readonly string[] = [
  doorPair,
  kickPanels,
  deckPods,
  quarterPair,
  reCover,
];
