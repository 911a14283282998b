import * as vscode from 'vscode';
import type { LocatedProblem, Snapshot } from '../engine/index.ts';
import { problemAddress } from './views/problem-view.ts';
import { shownProblems, worded } from './views/problem-words.ts';

const severities = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  note: vscode.DiagnosticSeverity.Information,
} as const;

/** A link that focuses the problem's cell: ranges in Problems never reach a custom editor. */
function cellLink(uri: vscode.Uri, located: LocatedProblem): vscode.Uri | undefined {
  const cell = problemAddress(located);
  if (cell === undefined) return undefined;
  const argument = encodeURIComponent(JSON.stringify([{ uri: uri.toString(), ...cell }]));
  return vscode.Uri.parse(`command:panelwright.focusCell?${argument}`);
}

function diagnostic(
  document: vscode.TextDocument,
  located: LocatedProblem,
  snapshot: Snapshot,
): vscode.Diagnostic {
  const { problem } = located;
  const range = new vscode.Range(
    document.positionAt(located.start),
    document.positionAt(located.end),
  );
  const one = new vscode.Diagnostic(
    range,
    worded(located, snapshot).message,
    severities[problem.severity],
  );
  one.source = 'Panelwright';
  const target = cellLink(document.uri, located);
  one.code = target === undefined ? problem.code : { value: problem.code, target };
  return one;
}

/** Shows the job's problems in VS Code's Problems view, each with a link to its cell. */
export function showProblems(
  collection: vscode.DiagnosticCollection,
  document: vscode.TextDocument,
  snapshot: Snapshot,
): void {
  collection.set(
    document.uri,
    shownProblems(snapshot).map((located) => diagnostic(document, located, snapshot)),
  );
}
