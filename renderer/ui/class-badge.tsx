import type { ReactNode } from 'react';
import { classStyles, type LabelShape } from '#shared-types/class-style.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';

/** A finding's class as letter, shape and colour. With `named` the word stands beside it. */
export function ClassBadge({ of, named = false }: { of: DamageClass; named?: boolean }) {
  const style = classStyles[of];
  const word = commonTexts.damageClasses[of];
  const badge = (
    <svg
      className={`class-badge class-badge-${of}`}
      viewBox="0 0 18 18"
      {...(named ? { 'aria-hidden': true } : { role: 'img', 'aria-label': word })}
    >
      {outlines[style.shape]}
      <text x="9" y="13.2" textAnchor="middle">
        {style.letter}
      </text>
    </svg>
  );
  if (!named) return badge;
  return (
    <span className="class-named">
      {badge}
      {word}
    </span>
  );
}

const outlines: Record<LabelShape, ReactNode> = {
  square: <rect x="0.5" y="0.5" width="17" height="17" rx="2" />,
  round: <circle cx="9" cy="9" r="8.75" />,
  diamond: <path d="M9 0L18 9L9 18L0 9Z" />,
};
