import * as vscode from 'vscode';
import { cases } from './cases.ts';

/** Hands each result out as one line; the tests outside read them. */
function tell(result: 'ok' | 'not ok', name: string, reason = ''): void {
  console.log(`case: ${result} - ${name}${reason === '' ? '' : ` - ${reason}`}`);
}

/**
 * Called in the extension host, on the desktop and in the browser alike. Fails if any case does, after
 * all have run.
 */
export async function run(): Promise<void> {
  let failed = 0;
  for (const [name, check] of Object.entries(cases)) {
    try {
      await check();
      tell('ok', name);
    } catch (fault) {
      if (!(fault instanceof Error)) throw fault;
      failed += 1;
      tell('not ok', name, fault.message.replaceAll('\n', ' '));
    }
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
  }
  if (failed > 0) throw new Error(`${failed} cases failed`);
}
