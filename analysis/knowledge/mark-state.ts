/**
 * What is known of a mark, and how the parts of a combined mark make one answer.
 *
 * Two of the states are answers: present, looked-for-absent. Three are not, each for its own reason:
 * - conflict: findings contradict each other. It is shown, never averaged away;
 * - unknown: nothing that was recorded settles it, and there is still something to look at;
 * - not-examined: what would settle it was recorded as not examined.
 *
 * Where the answers settle the whole, they do so as in Kleene's strong three-valued logic (S. C. Kleene,
 * Introduction to Metamathematics, 1952, section 64; from memory), all three others standing for its "undefined". Where
 * they do not, the whole keeps the reason that asks most of the analyst: conflict before unknown before
 * not-examined. So `all` and `any` stay each other's mirror when present and looked-for-absent are exchanged.
 */
export const markStates = ['present', 'looked-for-absent', 'not-examined', 'conflict', 'unknown'] as const;
export type MarkState = (typeof markStates)[number];

/** In which one of several parts tells: earlier beats later. */
const anyOrder = ['present', 'conflict', 'unknown', 'not-examined', 'looked-for-absent'] as const;
const allOrder = ['looked-for-absent', 'conflict', 'unknown', 'not-examined', 'present'] as const;

/** One present part makes it present; it is absent only when every part is. Of no parts: looked-for-absent. */
export function anyState(parts: readonly MarkState[]): MarkState {
  return anyOrder.find((state) => parts.includes(state)) ?? 'looked-for-absent';
}

/** One absent part makes it absent; it is present only when every part is. Of no parts: present. */
export function allState(parts: readonly MarkState[]): MarkState {
  return allOrder.find((state) => parts.includes(state)) ?? 'present';
}
