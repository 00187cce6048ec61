import type { InferredValue } from '../../build/infer/inferredOf.ts';
import type { PartKind } from '../../build/schema/partKinds.ts';

/** A field of a kind of part as a person fills it in; read off the schema. */
export interface PartField {
  /** As in a shelf file, groups with a dot: `shaft.diameter`. */
  readonly path: string;
  readonly label: string;
  /** What it is; empty where the label says it all. */
  readonly says: string;
  readonly required: boolean;
  /** Among the few asked first. */
  readonly first: boolean;
  /** To choose among; empty for what is typed. */
  readonly choices: readonly string[];
  /** The usual one first; empty where there is none. */
  readonly units: readonly string[];
  /** What is allowed, in words. */
  readonly allowed: string;
  /** Whether it is an amount of money. */
  readonly money: boolean;
  /** Whether it has a trust of its own. */
  readonly trusted: boolean;
}

/** What was typed into one field. */
export interface Told {
  readonly text: string;
  readonly unit?: string;
  readonly trust?: string;
}

export interface PartDraft {
  readonly kind: PartKind;
  /** Of an amount that is told without one: three letters. */
  readonly currency?: string;
  /** Of the part that is changed; a new one gets its own from its name. */
  readonly id?: string;
  readonly told: Readonly<Record<string, Told>>;
  /** What its file says beyond the fields here: tables, what is in the box. */
  readonly rest?: Readonly<Record<string, unknown>>;
}

export type DraftRead =
  | {
      readonly ok: true;
      readonly id: string;
      /** In the form of a shelf file. */
      readonly raw: Readonly<Record<string, unknown>>;
      readonly inferred: readonly InferredValue[];
    }
  | {
      readonly ok: false;
      readonly faults: readonly { readonly path: string; readonly says: string; readonly missing: boolean }[];
    };

/** A part of the user's own shelf, ready to be changed. */
export interface OwnPart {
  readonly id: string;
  readonly name: string;
  readonly draft: PartDraft;
}

/** What a value moves when it is 5 % more, most first. */
export interface Drive {
  readonly path: string;
  readonly moves: readonly string[];
}
