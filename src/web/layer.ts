import { createRef } from 'react';

/** Where lists and notes that open over the sheet are hung: inside `main`, so that they belong to it. */
export const layer = createRef<HTMLDivElement>();
