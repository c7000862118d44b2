/** The design page in a window of the program. */
import { openProgramHouse, type ProgramHouse, type ProgramWindow } from './program-house.ts';

export type GalleryWindow = ProgramWindow;
export type GalleryHouse = Pick<ProgramHouse, 'close'> & {
  open(options?: { theme?: 'light' | 'dark'; textScale?: number }): Promise<GalleryWindow>;
};

export async function openGalleryHouse(): Promise<GalleryHouse> {
  const house = await openProgramHouse();
  return { open: (options) => house.open({ route: '/gallery', ...options }), close: house.close };
}
