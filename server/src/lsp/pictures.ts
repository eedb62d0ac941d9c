/** The server's own requests: pictures, what stands where in them, outputs, and the pages of the rules. */
import type { Connection } from 'vscode-languageserver';
import { explanationOf } from '../checks/explain.ts';
import { RULES, ruleOf } from '../checks/list.ts';
import { svgOf } from '../drawing/svg.ts';
import { pictureOf } from '../features/picture.ts';
import { shapesAt } from '../features/shapes.ts';
import { headlineOf, summaryOf, type SummaryRow as Row } from '../features/summary.ts';
import { blockIn, textsIn, viewNamed, viewOf, writingIn } from '../features/views/make.ts';
import { paperOf } from '../features/views/paper.ts';
import { VIEWS, type ViewChoice } from '../features/views/view.ts';
import { snapshotOf, type Snapshot } from '../snapshot.ts';
import { documentOf } from '../text/document.ts';
import { rangeOf } from '../text/place.ts';
import type { AnswerContext } from './context.ts';
import { locationOf } from './convert.ts';
import { LIBRARY } from './patterns.ts';
import type { BuildAnswer, Choice, Drawn, Explanation, Exported, Preview, Requests, Summary, SummaryRow, Written } from './requests.ts';

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
    return snapshot ? { version: snapshot.version, path: shapesAt(snapshot, params.position, shownBy(params)), block: blockIn(snapshot, params) ?? null } : null;
  });
  on('scant/textAt', [], (params) => {
    const snapshot = newest(params.uri);
    if (!snapshot) return [];
    return textsIn(snapshot, params.x, params.y, params).flatMap((place) => locationOf(snapshot, place) ?? []);
  });
  on('scant/write', null, (params) => {
    const snapshot = newest(params.uri);
    return snapshot ? written(snapshot, params) : null;
  });
  on('scant/export', null, (params) => {
    const snapshot = newest(params.uri);
    return snapshot ? exported(snapshot, params) : null;
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

/** The picture that is shown: the cursor may stand in another block by now. */
function shownBy({ size, colorway, view, block, step }: Choice): ViewChoice {
  return { size, colorway, view, block, step };
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
  const { errors } = snapshot;
  const title = snapshot.pattern.title;
  return {
    svg: scene ? svgOf(scene, { seams: 'hairline', ...(title !== undefined && { title }) }) : null,
    errors: errors.map(({ place, message }) => `${snapshot.document.numberOf(place.line) + 1}: ${message}`),
  };
}

function previewOf(snapshot: Snapshot, params: Requests['scant/preview']['params']): Preview {
  const { title, errors, partial, kind, size, colorway } = pictureOf(snapshot, params);
  const { scene, labels, tiles, notes, table, step, block } = viewOf(snapshot, params);
  return {
    uri: params.uri,
    version: snapshot.version,
    title,
    svg: scene ? svgOf(scene, { seams: 'hairline', title: title === '' ? scene.title : title }) : null,
    width: scene?.width ?? 0,
    height: scene?.height ?? 0,
    kind,
    labels: labels.map((label) => ({ ...label })),
    errors,
    partial,
    sizes: snapshot.pattern.sizes.map(({ name }) => name),
    colorways: snapshot.pattern.colorways.map(({ name }) => name),
    size,
    colorway,
    views: VIEWS.map((view) => ({ ...view })),
    view: viewNamed(params.view),
    block: block ?? null,
    tiles: tiles.map((tile) => ({ ...tile, action: tile.action ?? null })),
    notes: [...notes],
    table: table ? { caption: table.caption, heads: [...table.heads], rows: table.rows.map((row) => [...row]) } : null,
    step: step ?? null,
  };
}

function written(snapshot: Snapshot, params: Requests['scant/write']['params']): Written | null {
  const writing = writingIn(snapshot, params, params.tile);
  if (!writing) return null;
  const edits = writing.edits.flatMap(({ place, text }) => {
    const range = rangeOf(snapshot.document, place);
    return range ? [{ range, text }] : [];
  });
  return { title: writing.title, uri: params.uri, version: snapshot.version, edits, colorway: writing.colorway ?? null };
}

function exported(snapshot: Snapshot, params: Requests['scant/export']['params']): Exported | null {
  const view = viewOf(snapshot, params);
  const name = viewNamed(params.view);
  const about = [snapshot.pattern.title ?? '', VIEWS.find((each) => each.name === name)?.title ?? '', view.block ?? ''].filter((part) => part !== '');
  const paper = paperOf(view, about.join(' – '));
  return paper && view.scene ? { name, width: view.scene.width, height: view.scene.height, ...paper } : null;
}

const UNKNOWN: BuildAnswer = { folder: null, written: [], unchanged: 0, refused: { why: 'unknown', message: 'There is no such file.' } };
const FAILED: BuildAnswer = { folder: null, written: [], unchanged: 0, refused: { why: 'failed', message: 'The build went wrong; the output of Scant says more.' } };

function explanation(id: string | undefined): Explanation {
  const rule = id === undefined ? undefined : ruleOf(id);
  return { rules: RULES.map(({ id: each, severity, title }) => ({ id: each, severity, title })), markdown: rule ? explanationOf(rule) : null };
}
