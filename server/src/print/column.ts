/** A column of text: where it lies, and the element of the reading order that holds what is in it. */
import { element, type Element, type ElementOptions, type Pdf, type Tag } from './pdf.ts';

export interface Column {
  readonly pdf: Pdf;
  readonly x: number;
  readonly width: number;
  /** The highest that a figure may be. */
  readonly height: number;
  readonly holder: Holder;
}

/** Made when it is first drawn into, so that elements stand in reading order. */
export type Holder = () => Element;

export function holderIn(pdf: Pdf, parent: Holder, tag: Tag, options: ElementOptions = {}): Holder {
  let made: Element | undefined;
  return () => (made ??= element(pdf, parent(), tag, options));
}
