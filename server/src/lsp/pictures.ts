/** The server's own requests: pictures, what stands where in them, outputs, and the pages of the rules. */
import type { Connection } from 'vscode-languageserver';
import { explanationOf } from '../checks/explain.ts';
import { RULES, ruleOf, severityOf } from '../checks/list.ts';
import { svgOf } from '../drawing/svg.ts';
import { pictureOf } from '../features/picture.ts';
import { shapesAt, textsAt } from '../features/shapes.ts';
import { headlineOf, summaryOf, type SummaryRow as Row } from '../features/summary.ts';
import { snapshotOf, type Snapshot } from '../snapshot.ts';
import { documentOf } from '../text/document.ts';
import type { AnswerContext } from './context.ts';
import { locationOf } from './convert.ts';
import { LIBRARY } from './patterns.ts';
import type { BuildAnswer, Drawn, Explanation, Preview, Requests, Summary, SummaryRow } from './requests.ts';

export function answerPictures(connection: Connection, { guard, services, snapshotOf: newest }: AnswerContext): void {
  const on = <M extends keyof Requests>(method: M, otherwise: Requests[M]['result'], handler: (params: Requests[M]['params']) => Requests[M]['result']): void => {
    connection.onRequest(method, guard.request(method, otherwise, handler));
  };
  on('scant/preview', null, (params) => {
    const snapshot = newest(params.uri);
    return snapshot ? previewOf(snapshot, params) : null;
  });
  on('scant/shapesAt', null, (params) => {
    const snapshot = newest(params.uri);
    return snapshot ? { version: snapshot.version, path: shapesAt(snapshot, params.position, params) } : null;
  });
  on('scant/textAt', [], (params) => {
    const snapshot = newest(params.uri);
    if (!snapshot) return [];
    return textsAt(snapshot, params.x, params.y, params).flatMap((place) => locationOf(snapshot, place) ?? []);
  });
  on('scant/build', FAILED, ({ uri, what }) => {
    const snapshot = newest(uri);
    return snapshot ? services.build(snapshot, uri, what) : UNKNOWN;
  });
  on('scant/headline', null, ({ uri }) => {
    const snapshot = newest(uri);
    if (!snapshot) return null;
    const { figures, errors } = headlineOf(snapshot);
    return { version: snapshot.version, figures: figures ?? null, errors };
  });
  on('scant/summary', null, ({ uri }) => {
    const snapshot = newest(uri);
    return snapshot ? summary(snapshot) : null;
  });
  on('scant/draw', { svg: null, errors: [] }, ({ text }) => drawn(text));
  on('scant/explain', { rules: [], markdown: null }, ({ rule }) => explanation(rule));
}

function summary(snapshot: Snapshot): Summary {
  const row = ({ label, detail, place, colour }: Row): SummaryRow => ({ label, detail, at: locationOf(snapshot, place) ?? null, colour: colour ?? null });
  const { sizes, fabrics, blocks, problems } = summaryOf(snapshot);
  return {
    version: snapshot.version,
    title: snapshot.pattern.title ?? '',
    sizes: sizes.map(row),
    fabrics: fabrics.map(row),
    blocks: blocks.map(row),
    problems: problems.map((group) => ({ ...group, rows: group.rows.map(row) })),
  };
}

/** Imports have no folder to be looked for in. */
function drawn(text: string): Drawn {
  const snapshot = snapshotOf(documentOf('untitled:fenced', text), 0, { library: [LIBRARY], import: () => 'missing' });
  const { scene } = pictureOf(snapshot, {});
  const errors = snapshot.problems.filter(({ rule }) => severityOf(rule) === 'error');
  const title = snapshot.pattern.title;
  return {
    svg: scene ? svgOf(scene, { seams: 'hairline', ...(title !== undefined && { title }) }) : null,
    errors: errors.map(({ place, message }) => `${snapshot.document.numberOf(place.line) + 1}: ${message}`),
  };
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
