import { useState } from 'react';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { Button } from '../ui/button.tsx';
import { AboutDialog } from './about-dialog.tsx';
import { SettingsDialog } from './settings-dialog.tsx';

/** The way to what concerns the whole program, from every screen. */
export function ProgramButtons() {
  const [open, setOpen] = useState<'settings' | 'about' | null>(null);
  const close = () => setOpen(null);
  return (
    <div className="program-buttons">
      <Button kind="quiet" onClick={() => setOpen('settings')}>
        {shellTexts.settings.open}
      </Button>
      <Button kind="quiet" onClick={() => setOpen('about')}>
        {shellTexts.about.open}
      </Button>
      <SettingsDialog open={open === 'settings'} onClose={close} />
      <AboutDialog open={open === 'about'} onClose={close} />
    </div>
  );
}
