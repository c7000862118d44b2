/** Tools, undo and redo. */
import { marksTexts } from '#shared-types/texts/marks.ts';
import { Button } from '../ui/button.tsx';
import { tools, type Tool } from './well-gesture.ts';

export const toolKeys = { select: 'V', arrow: 'W' } as const satisfies Record<Tool, string>;

export function MarksToolbar(props: {
  tool: Tool;
  readOnly: boolean;
  canUndo: boolean;
  canRedo: boolean;
  canRemove: boolean;
  onTool: (tool: Tool) => void;
  onUndo: () => void;
  onRedo: () => void;
  onRemove: () => void;
}) {
  const { tool, readOnly, canUndo, canRedo, canRemove } = props;
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
      <span className="marks-tools-rule" />
      <Button kind="quiet" disabled={!canUndo} aria-keyshortcuts="Control+Z" onClick={props.onUndo}>
        {marksTexts.undo}
      </Button>
      <Button kind="quiet" disabled={!canRedo} aria-keyshortcuts="Control+Shift+Z" onClick={props.onRedo}>
        {marksTexts.redo}
      </Button>
      <span className="marks-tools-rule" />
      <Button
        kind="quiet"
        disabled={!canRemove || readOnly}
        aria-keyshortcuts="Delete"
        onClick={props.onRemove}
      >
        {marksTexts.remove}
      </Button>
    </div>
  );
}
