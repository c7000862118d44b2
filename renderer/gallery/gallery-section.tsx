import type { ReactNode } from 'react';

export function GallerySection(props: { title: string; level?: 2 | 3; children: ReactNode }) {
  const Heading = props.level === 2 ? 'h2' : 'h3';
  return (
    <section className="gallery-section">
      <Heading>{props.title}</Heading>
      <div className="gallery-row">{props.children}</div>
    </section>
  );
}
