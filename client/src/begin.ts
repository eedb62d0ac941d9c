/** The first ten minutes: a new pattern to begin with, and the walkthrough. */
import { commands, window, workspace } from 'vscode';

const FIRST = `fabric ink  #22345c "Night ferry print"
fabric sand #eadfc8 "Dry sand solid"

block Buoy 6" {
  ink/sand  sand
  sand      ink/sand
}

quilt {
  straight 4 by 5
  place { Buoy }
  border 2" ink
  backing sand
  binding cut 2 1/4" ink
}
`;

export async function newPattern(): Promise<void> {
  await window.showTextDocument(await workspace.openTextDocument({ language: 'quilt', content: FIRST }));
}

export async function openWalkthrough(): Promise<void> {
  await commands.executeCommand('workbench.action.openWalkthrough', 'scant.scant#start', false);
}
