import { useEffect, useState } from 'react';

export type Picture = {
  readonly address: string;
  readonly image: HTMLImageElement | null;
  readonly failed: boolean;
};

/** A picture of the program's own, decoded and ready to be painted. */
export function usePicture(address: string): Picture {
  const [loaded, setLoaded] = useState<Picture | null>(null);

  useEffect(() => {
    const image = new Image();
    let current = true;
    const settle = (failed: boolean) => {
      if (current) setLoaded({ address, image: failed ? null : image, failed });
    };
    image.src = address;
    image.decode().then(
      () => settle(false),
      () => settle(true),
    );
    return () => {
      current = false;
    };
  }, [address]);

  return loaded?.address === address ? loaded : { address, image: null, failed: false };
}
