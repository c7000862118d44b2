/** All keys of the bench, and how to draw without a mouse. */
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Dialog } from '../ui/dialog.tsx';
import { Kbd } from '../ui/kbd.tsx';
import { keyGroups } from './mark-keys.ts';

const texts = marksTexts.keys;

export function KeysDialog({ onClose }: { onClose: () => void }) {
  return (
    <Dialog open title={texts.title} onClose={onClose} wide reading>
      <div className="marks-keys">
        {keyGroups.map(({ title, lines }) => (
          <section key={title}>
            <h3>{title}</h3>
            {title === texts.drawByKeys ? (
              <ol className="marks-keys-words">
                {texts.drawByKeysWords.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ol>
            ) : null}
            <dl>
              {lines.map(({ keys, words }) => (
                <div key={words}>
                  <dt>
                    {keys.map((key) => (
                      <Kbd key={key}>{key}</Kbd>
                    ))}
                  </dt>
                  <dd>{words}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
    </Dialog>
  );
}
