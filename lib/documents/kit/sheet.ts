import PDFDocument from 'pdfkit';
import { registerFonts } from '@/lib/documents/kit/fonts';
import { grid, type Style } from '@/lib/documents/kit/ink';

export type Paper = 'A4' | 'LETTER';

const sizes: Record<Paper, readonly [number, number]> = { A4: [595.28, 841.89], LETTER: [612, 792] };

/** A tagged element together with its type, which PDFKit wants again each time content is marked; a trial has no tree. */
export type Element = { readonly node: PDFKit.PDFStructureElement | null; readonly type: string };

export type SheetOptions = {
  size: Paper | readonly [number, number];
  title: string;
  author: string;
  lang: string;
  /** Stands in the file as its creation date, so that the same facts give the same bytes. */
  made: Date;
  margin?: number;
  foot?: number;
  /** Below 1 the running text is set smaller, to keep a document on its page. */
  scale?: number;
  /** Height of what `atNewPage` draws. */
  head?: number;
  /** Only to learn where everything would stand: text is set and pages are turned, but nothing is drawn. */
  isTrial?: boolean;
};

type Area = { x: number; y: number; width: number; height: number };
type Attachment = { name: string; type: string; description: string; made: Date };

/**
 * A PDF being drawn from top to bottom, and the only place that touches the structure tree: every element is added
 * to its parent the moment it is made and ended when its drawing returns, because an element left out of the tree
 * keeps PDFKit's stream open for ever, without an error.
 */
export class Sheet {
  readonly root: Element;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  readonly scale: number;
  /** Where the content of a further page begins. */
  readonly freshTop: number;
  y: number;
  pages = 1;
  /** Draws the head of each further page, as an artifact. */
  atNewPage: (() => void) | null = null;
  private readonly paper: PDFKit.PDFDocument | null;
  private readonly chunks: Uint8Array[] = [];
  private marking = false;
  private fresh: number;

  constructor(options: SheetOptions) {
    const [width, height] = typeof options.size === 'string' ? sizes[options.size] : options.size;
    const margin = options.margin ?? grid.margin;
    this.paper = options.isTrial ? null : this.openPaper(options, [width, height]);
    this.left = margin;
    this.width = width - 2 * margin;
    this.top = margin;
    this.bottom = height - margin - (options.foot ?? 0);
    this.scale = options.scale ?? 1;
    this.freshTop = margin + (options.head ?? 0);
    this.y = margin;
    this.fresh = margin;
    const node = this.paper?.struct('Document') ?? null;
    if (node) this.paper?.addStructure(node);
    this.root = { node, type: 'Document' };
  }

  private openPaper(options: SheetOptions, size: [number, number]): PDFKit.PDFDocument {
    const doc = new PDFDocument({
      size,
      margin: 0,
      pdfVersion: '1.7',
      tagged: true,
      lang: options.lang,
      displayTitle: true,
      bufferPages: true,
      info: {
        Title: options.title,
        Author: options.author,
        Creator: 'Mendpost',
        Producer: 'PDFKit',
        CreationDate: options.made,
        ModDate: options.made,
      },
    });
    registerFonts(doc);
    doc.on('data', (chunk: Uint8Array) => this.chunks.push(chunk));
    return doc;
  }

  /** The pen, inside `mark` and `artifact` only: a trial never gets there. */
  get doc(): PDFKit.PDFDocument {
    if (!this.paper) throw new Error('a trial has no paper to draw on');
    return this.paper;
  }

  /** A running style at this sheet's scale. */
  sized(style: Style): Style {
    return { ...style, size: style.size * this.scale, leading: style.leading * this.scale };
  }

  element<T>(
    parent: Element,
    type: string,
    draw: (element: Element) => T,
    options: PDFKit.Mixins.StructureElementOptions = {},
  ): T {
    const node = this.grow(parent, type, options);
    try {
      return draw({ node, type });
    } finally {
      node?.end();
    }
  }

  /** Several elements of one parent that are open together, as the cells of a row are. */
  siblings(
    parent: Element,
    kinds: readonly { type: string; options?: PDFKit.Mixins.StructureElementOptions }[],
    draw: (elements: readonly Element[]) => void,
  ): void {
    const elements = kinds.map(({ type, options }) => ({
      node: this.grow(parent, type, options ?? {}),
      type,
    }));
    try {
      draw(elements);
    } finally {
      for (const element of elements) element.node?.end();
    }
  }

  /** Draws content of an element on the present page. Marks never nest and never cross a page. */
  mark(element: Element, draw: () => void): void {
    this.enter();
    if (this.paper) {
      element.node?.add(this.paper.markStructureContent(element.type));
      draw();
    }
    this.leave();
  }

  /** Draws what is no part of the reading: rules, tints, perforations, page feet. */
  artifact(draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
    this.enter();
    if (this.paper) {
      this.paper.markContent('Artifact', { type });
      draw();
    }
    this.leave();
  }

  /** Makes an area of the page lead to an address; the description is what a screen reader says of it. */
  link(element: Element, at: Area, url: string, description: string): void {
    if (!element.node) return;
    // PDFKit gives a tagged link an empty description unless one is handed to it as a String object.
    const described = { structParent: element.node, Contents: new String(description) };
    this.doc.link(at.x, at.y, at.width, at.height, url, described);
  }

  /** Puts a file of data into the document. */
  attach(text: string, { name, type, description, made }: Attachment): void {
    this.paper?.file(Buffer.from(text, 'utf8'), {
      name,
      type,
      description,
      creationDate: made,
      modifiedDate: made,
      relationship: 'Data',
    });
  }

  /** True while nothing but the page's head has been drawn on it. */
  get isFresh(): boolean {
    return this.y <= this.fresh + 0.01;
  }

  /** Turns to a new page unless this much height is left, or the page is still fresh. */
  room(height: number): void {
    if (this.y + height > this.bottom + 0.01 && !this.isFresh) this.newPage();
  }

  newPage(): void {
    if (this.marking) throw new Error('a page cannot be turned inside marked content');
    this.paper?.addPage();
    this.pages += 1;
    this.y = this.top;
    this.atNewPage?.();
    this.y = this.freshTop;
    this.fresh = this.y;
  }

  /** Runs once for every page, with that page current. */
  eachPage(draw: (page: number, pages: number) => void): void {
    for (let page = 0; page < this.pages; page += 1) {
      this.doc.switchToPage(page);
      draw(page + 1, this.pages);
    }
  }

  finish(): Promise<Uint8Array> {
    return new Promise((resolve, reject) => {
      this.doc.on('end', () => resolve(Buffer.concat(this.chunks)));
      this.doc.on('error', reject);
      this.root.node?.end();
      this.doc.end();
    });
  }

  private enter(): void {
    if (this.marking) throw new Error('marked content cannot hold other marked content');
    this.marking = true;
  }

  private leave(): void {
    this.paper?.endMarkedContent();
    this.marking = false;
  }

  private grow(
    parent: Element,
    type: string,
    options: PDFKit.Mixins.StructureElementOptions,
  ): PDFKit.PDFStructureElement | null {
    if (!this.paper) return null;
    const node = this.paper.struct(type, options);
    parent.node?.add(node);
    return node;
  }
}
