import { useEffect } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';
import { galleryTexts } from '#shared-types/texts/gallery.ts';
import './gallery.css';
import { GalleryControls } from './gallery-controls.tsx';
import { GalleryFoundations } from './gallery-foundations.tsx';
import { GalleryOverlays } from './gallery-overlays.tsx';
import { GalleryPlaces } from './gallery-places.tsx';

const themes = ['light', 'dark'] as const;

/** The design of the pages on one page. It asks the program nothing. */
export function GalleryScreen() {
  useEffect(() => {
    document.title = `${galleryTexts.title} – ${commonTexts.programName}`;
  }, []);
  return (
    <main className="gallery">
      <h1>{galleryTexts.title}</h1>
      <p className="secondary-words">{galleryTexts.intro}</p>
      <GalleryOverlays />
      <div className="gallery-themes">
        {themes.map((theme) => (
          <section key={theme} data-theme={theme} className="gallery-theme" aria-label={galleryTexts[theme]}>
            <h2 className="gallery-theme-name">{galleryTexts[theme]}</h2>
            <GalleryFoundations />
            <GalleryControls />
            <GalleryPlaces theme={theme} />
          </section>
        ))}
      </div>
    </main>
  );
}
