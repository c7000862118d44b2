// The shared styles come first: what a part of the page imports may refine them.
import './styles/fonts.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/tables.css';
import './styles/places.css';
import './styles/overlays.css';
import './app/frame.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { carrier } from './api/client.ts';
import { beginEventIntake } from './api/event-intake.ts';
import { queryClient } from './api/query-client.ts';
import { App } from './app/app.tsx';
import { watchForFaults } from './app/fault.ts';
import { showSystemTheme } from './app/theme.ts';
import { toastError } from './ui/toaster.tsx';

showSystemTheme();
watchForFaults(toastError);
beginEventIntake(carrier, queryClient);

const page = document.getElementById('page');
if (page === null) throw new Error('the page has no place to draw in');
createRoot(page).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
