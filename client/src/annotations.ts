/** One switch for the figures beside and above the text. */
import { ConfigurationTarget, workspace } from 'vscode';

export async function toggleAnnotations(): Promise<void> {
  const settings = workspace.getConfiguration('scant');
  const inspected = settings.inspect<boolean>('annotations');
  const target = inspected?.workspaceValue === undefined ? ConfigurationTarget.Global : ConfigurationTarget.Workspace;
  await settings.update('annotations', settings.get<boolean>('annotations') !== true, target);
}
