import type { Drawing, DrawnText, Shape } from '../document';
import type { Pen, Tag } from './pen';
import { ink } from './styles';

/** Printed size in pt. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size a drawing takes, no wider and no higher than there is room, its proportions kept. */
export function sizeOf(drawing: Drawing, room: Size): Size {
  const wanted = (drawing.printWidth ?? drawing.width) / drawing.width;
  const scale = Math.min(wanted, room.width / drawing.width, room.height / drawing.height);
  return { width: drawing.width * scale, height: drawing.height * scale };
}

function drawShape(pen: Pen, shape: Shape): void {
  const { document } = pen;
  const rule = shape.fillRule === 'evenodd' ? 'even-odd' : 'non-zero';
  document.save().lineJoin('round').path(shape.path);
  if (shape.cap !== undefined) document.lineCap(shape.cap);
  if (shape.stroke !== undefined) document.lineWidth(shape.strokeWidth ?? 1);
  if (shape.dash !== undefined && shape.dash.length > 0) document.dash([...shape.dash], { phase: 0 });
  if (shape.fill !== undefined && shape.stroke !== undefined)
    document.fillAndStroke(shape.fill, shape.stroke, rule);
  else if (shape.fill !== undefined) document.fill(shape.fill, rule);
  else document.stroke(shape.stroke ?? ink);
  document.restore();
}

function drawText(pen: Pen, said: DrawnText): void {
  const face = said.face ?? 'sans';
  const width = pen.widthOf(said.text, face, said.size);
  const shift = { start: 0, middle: width / 2, end: width }[said.anchor ?? 'start'];
  pen.text(said.text, said.x - shift, said.y, {
    face,
    size: said.size,
    colour: said.colour ?? ink,
  });
}

/** Draws with the upper left corner at (x, y), `width` pt wide. */
export function drawFigure(pen: Pen, drawing: Drawing, x: number, y: number, width: number): void {
  pen.document
    .save()
    .translate(x, y)
    .scale(width / drawing.width);
  for (const shape of drawing.shapes) drawShape(pen, shape);
  for (const said of drawing.texts ?? []) drawText(pen, said);
  pen.document.restore();
}

/** The node for a drawing: a figure with its words, or a plain aside when the drawing says nothing of its own. */
export const figureTag = (pen: Pen, parent: Tag, drawing: Drawing): Tag =>
  pen.tag(parent, 'Figure', { alt: drawing.says });
