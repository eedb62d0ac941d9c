/** The server's own requests: pictures, what stands where in them, outputs, and the pages of the rules. */
import type { Connection } from 'vscode-languageserver';
import { explanationOf } from '../checks/explain.ts';
import { RULES, ruleOf } from '../checks/list.ts';
import { svgOf } from '../drawing/svg.ts';
import { pictureOf } from '../features/picture.ts';
import { shapesAt, textsAt } from '../features/shapes.ts';
import type { Snapshot } from '../snapshot.ts';
import type { AnswerContext } from './context.ts';
import { locationOf } from './convert.ts';
import type { BuildAnswer, Explanation, Preview, Requests } from './requests.ts';

export function answerPictures(connection: Connection, { guard, services, snapshotOf }: AnswerContext): void {
  const on = <M extends keyof Requests>(method: M, otherwise: Requests[M]['result'], handler: (params: Requests[M]['params']) => Requests[M]['result']): void => {
    connection.onRequest(method, guard.request(method, otherwise, handler));
  };
  on('scant/preview', null, (params) => {
    const snapshot = snapshotOf(params.uri);
    return snapshot ? previewOf(snapshot, params) : null;
  });
  on('scant/shapesAt', null, (params) => {
    const snapshot = snapshotOf(params.uri);
    return snapshot ? { version: snapshot.version, path: shapesAt(snapshot, params.position, params) } : null;
  });
  on('scant/textAt', [], (params) => {
    const snapshot = snapshotOf(params.uri);
    if (!snapshot) return [];
    return textsAt(snapshot, params.x, params.y, params).flatMap((place) => locationOf(snapshot, place) ?? []);
  });
  on('scant/build', FAILED, ({ uri, what }) => {
    const snapshot = snapshotOf(uri);
    return snapshot ? services.build(snapshot, uri, what) : UNKNOWN;
  });
  on('scant/explain', { rules: [], markdown: null }, ({ rule }) => explanation(rule));
}

function previewOf(snapshot: Snapshot, params: Requests['scant/preview']['params']): Preview {
  const { scene, labels, ...picture } = pictureOf(snapshot, params);
  return {
    uri: params.uri,
    version: snapshot.version,
    svg: scene ? svgOf(scene, { seams: 'hairline', title: picture.title }) : null,
    width: scene?.width ?? 0,
    height: scene?.height ?? 0,
    labels: labels.map((label) => ({ ...label })),
    sizes: snapshot.pattern.sizes.map(({ name }) => name),
    colorways: snapshot.pattern.colorways.map(({ name }) => name),
    ...picture,
  };
}

const UNKNOWN: BuildAnswer = { folder: null, written: [], unchanged: 0, refused: { why: 'unknown', message: 'There is no such file.' } };
const FAILED: BuildAnswer = { folder: null, written: [], unchanged: 0, refused: { why: 'failed', message: 'The build went wrong; the output of Scant says more.' } };

function explanation(id: string | undefined): Explanation {
  const rule = id === undefined ? undefined : ruleOf(id);
  return { rules: RULES.map(({ id: each, severity, title }) => ({ id: each, severity, title })), markdown: rule ? explanationOf(rule) : null };
}
