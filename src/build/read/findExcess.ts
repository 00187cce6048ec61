import { CST, Lexer } from 'yaml';

/** Lexemes: a shelf of 1000 parts has about 150000. */
const MOST_LEXEMES = 250_000;

/** Where a text first goes beyond the limits, as an offset into it. */
export type Excess = { readonly kind: 'depth' | 'length'; readonly offset: number } | undefined;

/**
 * Walks a text's lexemes and stops at the first place nested deeper than `limit` or after too many
 * lexemes, before any parser recurses into it. Block levels are counted by indentation and by
 * list marks on one line, flow levels by brackets.
 */
export function findExcess(text: string, limit: number): Excess {
  const indents: number[] = [];
  let offset = 0;
  let lexemes = 0;
  let flow = 0;
  let lineStart = true;
  let indent = 0;
  let marks = 0;
  for (const lexeme of new Lexer().lex(text)) {
    lexemes++;
    if (lexemes > MOST_LEXEMES) return { kind: 'length', offset };
    const type = CST.tokenType(lexeme);
    switch (type) {
      case 'newline':
        lineStart = true;
        indent = 0;
        marks = 0;
        break;
      case 'space':
        if (lineStart) indent = lexeme.length;
        break;
      case 'flow-map-start':
      case 'flow-seq-start':
        flow++;
        break;
      case 'flow-map-end':
      case 'flow-seq-end':
        flow = Math.max(0, flow - 1);
        break;
      case 'seq-item-ind':
      case 'explicit-key-ind':
        marks++;
        break;
      default:
        break;
    }
    if (type !== 'newline' && type !== 'space' && type !== 'comment' && lineStart) {
      lineStart = false;
      while ((indents.at(-1) ?? -1) > indent) indents.pop();
      if ((indents.at(-1) ?? -1) < indent) indents.push(indent);
    }
    if (indents.length + flow + marks > limit) return { kind: 'depth', offset };
    // The lexer marks scalars and the start of a document by control letters that are not in the text.
    if (!CONTROL.has(lexeme)) offset += lexeme.length;
  }
  return undefined;
}

const CONTROL = new Set([CST.BOM, CST.DOCUMENT, CST.FLOW_END, CST.SCALAR]);
