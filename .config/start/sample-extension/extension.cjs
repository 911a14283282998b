const vscode = require('vscode');

/**
 * A file that VS Code is told to open as it starts, it opens as text: it does not know yet that there is
 * a grid for it. A command of the grid's own extension waits until it does.
 */
exports.activate = async function activate({ extension }) {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  const isBegun = vscode.window.tabGroups.all.some(({ tabs }) => tabs.length > 0);
  if (folder === undefined || isBegun) return;
  const sample = vscode.Uri.joinPath(folder.uri, extension.packageJSON.opens);
  await vscode.commands.executeCommand('panelwright.openAsGrid', sample);
};
