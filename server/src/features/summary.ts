/** A pattern at a glance: what comes out, its sizes, fabrics, blocks and problems, each with the text it comes from. */
import { ruleOf, severityOf } from '../checks/list.ts';
import type { Severity } from '../checks/rule.ts';
import type { Snapshot } from '../snapshot.ts';
import { groupedBy } from '../text/grouped.ts';
import type { Place } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { figuresOf } from './lenses.ts';
import { boughtOf, perSize, sideBySide } from './measures.ts';

export interface SummaryRow {
  readonly label: string;
  readonly detail: string;
  readonly place: Place;
  /** `#rrggbb`, of a fabric. */
  readonly colour?: string;
}

export interface Summary {
  readonly sizes: readonly SummaryRow[];
  readonly fabrics: readonly SummaryRow[];
  readonly blocks: readonly SummaryRow[];
  readonly problems: readonly { readonly rule: string; readonly title: string; readonly severity: Severity; readonly rows: readonly SummaryRow[] }[];
}

export interface Headline {
  /** `20" by 26", 168 patches, 2 yd`; undefined where there is no quilt. */
  readonly figures: string | undefined;
  readonly errors: number;
}

export function headlineOf(snapshot: Snapshot): Headline {
  const errors = snapshot.errors.length;
  const { shown } = snapshot;
  return { figures: shown && errors === 0 ? figuresOf(snapshot, shown) : undefined, errors };
}

export function summaryOf(snapshot: Snapshot): Summary {
  const { pattern, document } = snapshot;
  return {
    sizes: snapshot.quilts.flatMap((quilt) => (quilt.size ? [{ label: quilt.size.name, detail: figuresOf(snapshot, quilt), place: quilt.size.place }] : [])),
    fabrics: [...pattern.fabrics.values()].filter(({ place }) => place.line.source === document.source).map(({ name, label, colour, place }) => {
      const buy = perSize(snapshot, ({ plan }) => {
        const found = plan.fabrics.find((each) => each.fabric.name === name);
        return found && boughtOf(found, pattern);
      });
      return { label: name, detail: [buy, label].filter((part) => part !== undefined && part !== '').join(', '), place, colour };
    }),
    blocks: blocksOf(snapshot).map(({ definition, layout }) => {
      const times = perSize(snapshot, (quilt) => `${quilt.layout.blocks.filter((each) => each.layout.instance.definition.statement === definition.statement).reduce((sum, each) => sum + each.count, 0)}`);
      const size = layout.instance.size ? sideBySide(layout, pattern) : undefined;
      return { label: definition.name, detail: [times, size].filter((part) => part !== undefined && part !== '0').join(' · '), place: definition.place };
    }),
    problems: [...groupedBy(snapshot.problems, ({ rule }) => rule)].map(([rule, found]) => ({
      rule, title: ruleOf(rule)?.title ?? rule, severity: severityOf(rule), rows: found.map(({ message, place }) => ({ label: message, detail: '', place })),
    })),
  };
}
