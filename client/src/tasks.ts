/** The task that checks every pattern of a folder with the command line; its problem matcher is in the manifest. */
import { ProcessExecution, Task, TaskGroup, tasks, workspace, type Disposable, type TaskDefinition, type WorkspaceFolder } from 'vscode';

const TYPE = 'scant';

export function offerTasks(commandLine: string): Disposable {
  return tasks.registerTaskProvider(TYPE, {
    provideTasks: () => (workspace.workspaceFolders ?? []).map((folder) => taskFor(commandLine, folder, { type: TYPE, task: 'check' })),
    resolveTask: (task) => {
      const folder = typeof task.scope === 'object' ? task.scope : workspace.workspaceFolders?.[0];
      return folder && task.definition.task === 'check' ? taskFor(commandLine, folder, task.definition) : undefined;
    },
  });
}

/** Run with the editor's own Node, so that nothing has to be installed. */
function taskFor(commandLine: string, folder: WorkspaceFolder, definition: TaskDefinition): Task {
  const path: unknown = definition.path;
  const run = new ProcessExecution(process.execPath, [commandLine, 'check', typeof path === 'string' ? path : '.'], { cwd: folder.uri.fsPath, env: { ELECTRON_RUN_AS_NODE: '1' } });
  const task = new Task(definition, folder, 'check', 'scant', run, '$scant');
  task.group = TaskGroup.Build;
  task.detail = 'Every problem of every pattern';
  return task;
}
