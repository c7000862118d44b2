import { QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { searchTexts } from '#shared-types/texts/search.ts';
import { shelfTexts } from '#shared-types/texts/shelf.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { queryClient } from '../api/query-client.ts';
import { SearchScreen } from '../search/search-screen.tsx';
import { ShelfScreen } from '../shelf/shelf-screen.tsx';
import { BusyState } from '../ui/busy-state.tsx';
import { Toaster } from '../ui/toaster.tsx';
import { galleryAddress, searchAddress, shelfAddress } from './addresses.ts';
import { AnalystGate } from './analyst-gate.tsx';
import { CaseFrame } from './case-frame.tsx';
import { ErrorBoundary } from './error-boundary.tsx';
import { Frame } from './frame.tsx';
import { NotFound } from './not-found.tsx';
import { ProgramHeader } from './program-header.tsx';
import { useTheme } from './theme.ts';

const GalleryScreen = lazy(async () => ({
  default: (await import('../gallery/gallery-screen.tsx')).GalleryScreen,
}));

export function App() {
  return (
    <ErrorBoundary where="page">
      <QueryClientProvider client={queryClient}>
        <Router hook={useHashLocation}>
          <Switch>
            <Route path={galleryAddress}>
              <Suspense fallback={<BusyState />}>
                <GalleryScreen />
              </Suspense>
            </Route>
            <Route>
              <Program />
            </Route>
          </Switch>
        </Router>
        <Toaster />
      </QueryClientProvider>
    </ErrorBoundary>
  );
}

function Program() {
  useTheme();
  return (
    <AnalystGate>
      <Switch>
        <Route path={shelfAddress}>
          <Frame title={shelfTexts.title} header={<ProgramHeader />}>
            <ShelfScreen />
          </Frame>
        </Route>
        <Route path={searchAddress}>
          <Frame title={searchTexts.title} header={<ProgramHeader wideFind />}>
            <SearchScreen />
          </Frame>
        </Route>
        <Route path="/case/:caseId/:station?/:inside?">
          <CaseFrame />
        </Route>
        <Route>
          <Frame title={shellTexts.notFound.title} header={<ProgramHeader />}>
            <NotFound />
          </Frame>
        </Route>
      </Switch>
    </AnalystGate>
  );
}
