import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const releases = 'https://update.code.visualstudio.com/api/releases/stable';
const probeMs = 5000;

/** Whether a desktop program can show a window here. */
function hasScreen() {
  if (process.platform !== 'linux') return true;
  return Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY']);
}

/** Why a desktop VS Code cannot be fetched and shown here; `undefined` when it can. */
export async function desktopHindrance() {
  if (!hasScreen()) return 'there is no screen to show it on';
  try {
    const answer = await fetch(releases, { signal: AbortSignal.timeout(probeMs) });
    return answer.ok ? undefined : `its download site answered ${answer.status}`;
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    return `its download site did not answer within ${probeMs / 1000} s`;
  }
}

/**
 * Program file of a desktop VS Code, fetched where it can be.
 *
 * @param {string} [version] the newest stable one by default
 * @returns {Promise<string | undefined>}
 */
export async function fetchDesktop(version = 'stable') {
  if ((await desktopHindrance()) !== undefined) return undefined;
  /** @type {{ downloadAndUnzipVSCode: (version: string) => Promise<string> }} */
  const { downloadAndUnzipVSCode } = createRequire(join(root, 'package.json'))(
    '@vscode/test-electron',
  );
  return downloadAndUnzipVSCode(version);
}
