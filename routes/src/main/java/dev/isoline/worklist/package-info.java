/**
 * The modality worklist, PS3.4 annex K: orders are offered to recorder stations as they become
 * ready, and found by C-FIND.
 *
 * <p>{@link dev.isoline.worklist.WorklistEntries} keeps the entries in the unit of work that moves
 * an order. {@link dev.isoline.worklist.Worklist} answers queries: the keys are checked ({@link
 * dev.isoline.worklist.WorklistKeys}), the ledger finds candidates by them, each is matched exactly
 * (PS3.4 C.2.2.2) and cut down to what was asked for.
 */
package dev.isoline.worklist;
