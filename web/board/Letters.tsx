import type { ComponentProps } from "react";
import { Text } from "react-konva";

/**
 * Letters on the canvas, from left to right. Where the direction is not told, the canvas looks it up in the styles of the
 * page at every text, which costs more than all the drawing.
 */
export const Letters = (props: ComponentProps<typeof Text>) => <Text direction="ltr" {...props} />;
