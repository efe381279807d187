/** How the editor looks: ink on paper, told apart by weight and tone. */

import { HighlightStyle } from '@codemirror/language';
import { EditorView } from '@codemirror/view';
import { tags } from '@lezer/highlight';

/** Ink of each kind of word. */
export const inks = HighlightStyle.define([
  { tag: tags.labelName, color: 'var(--graphite)' },
  { tag: tags.keyword, fontWeight: '700' },
  { tag: tags.controlKeyword, fontWeight: '400' },
  { tag: tags.number, color: 'var(--umber)', fontWeight: '700' },
  { tag: [tags.bracket, tags.operator, tags.punctuation], color: 'var(--graphite)' }
]);

/** Everything around the words. */
export const look = EditorView.theme({
  '&': { color: 'var(--ink)', backgroundColor: 'var(--leaf)', fontSize: '0.9375rem' },
  '&.cm-focused': { outline: '2px solid var(--ink)', outlineOffset: '-2px' },
  '.cm-scroller': { fontFamily: 'var(--text-font)', lineHeight: '1.6' },
  '.cm-content': { padding: '0.5rem 0', caretColor: 'var(--ink)', fontVariantNumeric: 'tabular-nums' },
  '.cm-line': { padding: '0 0.75rem 0 0.5rem' },
  '.cm-line.heading, .cm-line.title': { fontFamily: 'var(--title-font)', fontWeight: '600', fontSize: '1.125em' },
  '.cm-line.title': { fontSize: '1.375em' },
  '.cm-line.heading span, .cm-line.title span': { color: 'inherit', fontWeight: 'inherit' },
  '.cm-line.prose': { color: 'var(--graphite)' },
  '.cm-line.prose span': { color: 'inherit', fontWeight: 'inherit' },
  '&.cm-focused .cm-cursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': { backgroundColor: 'transparent', color: 'var(--graphite)', border: '0' },
  '.cm-lineNumbers .cm-gutterElement': { padding: '0 0.25rem 0 0.5rem', minWidth: '2rem', fontSize: '0.8125rem' },
  '.cm-gutter.counts': {
    minWidth: '5.5rem',
    borderLeft: '1px solid var(--rule)',
    fontSize: '0.8125rem',
    fontVariantNumeric: 'tabular-nums'
  },
  '.cm-gutter.counts .cm-gutterElement': { padding: '0 0.625rem 0 0.5rem', textAlign: 'right', whiteSpace: 'nowrap' },
  '.cm-lintRange-error, .cm-lintRange-warning, .cm-lintRange-info': {
    backgroundImage: 'none',
    textDecoration: 'underline 2px',
    textUnderlineOffset: '0.2em'
  },
  '.cm-lintRange-error': { textDecorationStyle: 'wavy' },
  '.cm-lintRange-warning': { textDecorationStyle: 'dashed' },
  '.cm-lintRange-info': { textDecorationStyle: 'dotted', textDecorationThickness: '1px' },
  '.cm-lint-marker': { width: '0.75rem', height: '0.75rem', marginTop: '0.375rem' },
  '.cm-lint-marker-error': { content: 'none', backgroundColor: 'var(--ink)' },
  '.cm-lint-marker-warning': {
    content: 'none',
    border: '2px solid var(--ink)',
    clipPath: 'none'
  },
  '.cm-lint-marker-info': { content: 'none', border: '2px solid var(--graphite)', borderRadius: '50%' },
  '.cm-tooltip': { backgroundColor: 'var(--leaf)', border: '1px solid var(--edge)', borderRadius: 'var(--round)' },
  '.cm-diagnostic': { padding: '0.375rem 0.75rem', borderLeft: '0', fontFamily: 'var(--text-font)', maxWidth: '26rem' },
  '.cm-diagnosticAction': {
    minHeight: '1.75rem',
    margin: '0.25rem 0.5rem 0 0',
    padding: '0.125rem 0.625rem',
    backgroundColor: 'var(--leaf)',
    border: '1px solid var(--edge)',
    borderRadius: 'var(--round)',
    color: 'var(--ink)',
    cursor: 'pointer'
  },
  '.cm-diagnosticAction:hover': { backgroundColor: 'var(--sand)' },
  '.reading': { padding: '0.375rem 0.75rem', maxWidth: 'min(26rem, 90vw)', fontFamily: 'var(--text-font)' },
  '.reading p:first-child': { fontWeight: '700' },
  '.reading p + p': { color: 'var(--graphite)' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {
    fontFamily: 'var(--text-font)',
    fontSize: '0.9375rem',
    maxWidth: 'min(34rem, 94vw)',
    maxHeight: '15rem'
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {
    display: 'flex',
    gap: '1rem',
    justifyContent: 'space-between',
    padding: '0.25rem 0.625rem',
    lineHeight: '1.4'
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li[aria-selected]': {
    backgroundColor: 'var(--ink)',
    color: 'var(--paper)'
  },
  '.cm-completionLabel': { flex: 'none', fontWeight: '700', fontVariantNumeric: 'tabular-nums' },
  '.cm-completionMatchedText': { textDecoration: 'none' },
  '.cm-completionDetail': {
    marginLeft: '0',
    overflow: 'hidden',
    textOverflow: 'ellipsis',
    fontStyle: 'normal',
    color: 'var(--graphite)'
  },
  'li[aria-selected] .cm-completionDetail': { color: 'inherit', whiteSpace: 'normal' },
  '.cm-foldGutter .cm-gutterElement': { width: '1rem', textAlign: 'center', cursor: 'pointer' },
  '.cm-foldPlaceholder': {
    margin: '0 0.5rem',
    padding: '0 0.5rem',
    backgroundColor: 'var(--sand)',
    border: '1px solid var(--edge)',
    borderRadius: 'var(--round)',
    color: 'var(--ink)'
  },
  '.cm-panels': { backgroundColor: 'var(--sand)', color: 'var(--ink)' },
  '.cm-panel input, .cm-panel button': {
    background: 'var(--leaf)',
    border: '1px solid var(--edge)',
    color: 'var(--ink)'
  },
  '.cm-selectionBackground, &.cm-focused .cm-selectionBackground': { backgroundColor: 'var(--sand-deep)' },
  '.cm-searchMatch': { backgroundColor: 'var(--sand-deep)' }
});
