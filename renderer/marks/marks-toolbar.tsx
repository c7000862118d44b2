/** Tools, undo and redo, and the list of keys. */
import { tools, type Tool } from '#analysis/marks/gesture/gesture.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Button } from '../ui/button.tsx';
import { deedKeys, toolKeys } from './mark-keys.ts';

export function MarksToolbar(props: {
  tool: Tool;
  readOnly: boolean;
  canUndo: boolean;
  canRedo: boolean;
  onTool: (tool: Tool) => void;
  onUndo: () => void;
  onRedo: () => void;
  onKeys: () => void;
}) {
  const { tool, readOnly, canUndo, canRedo } = props;
  return (
    <div className="marks-tools" role="toolbar" aria-label={marksTexts.toolsLabel}>
      {tools.map((each) => (
        <Button
          key={each}
          kind="quiet"
          pressed={tool === each}
          shortcut={toolKeys[each]}
          title={marksTexts.toolHints[each]}
          disabled={readOnly && each !== 'select'}
          onClick={() => props.onTool(each)}
        >
          {marksTexts.tools[each]}
        </Button>
      ))}
      <span className="marks-tools-gap" />
      <Button kind="quiet" disabled={!canUndo} aria-keyshortcuts="Control+Z" onClick={props.onUndo}>
        {marksTexts.undo}
      </Button>
      <Button kind="quiet" disabled={!canRedo} aria-keyshortcuts="Control+Shift+Z" onClick={props.onRedo}>
        {marksTexts.redo}
      </Button>
      <Button kind="quiet" shortcut={deedKeys.keys} aria-haspopup="dialog" onClick={props.onKeys}>
        {marksTexts.keys.button}
      </Button>
    </div>
  );
}
