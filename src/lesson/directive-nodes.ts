/// <reference types="remark-directive" preserve="true" />
import type { RootContentMap } from 'mdast';

// remark-directive adds its nodes to those of mdast, but exports no names for them.
export type TextDirective = RootContentMap['textDirective'];
export type LeafDirective = RootContentMap['leafDirective'];
export type ContainerDirective = RootContentMap['containerDirective'];
