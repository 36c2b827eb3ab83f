import { lapRows, type SkinFace, stackedWords } from "../../../core/skins/index.ts";
import { ScrollAcross } from "../../controls/index.ts";

/** Beside each joint: which cloth goes down first, which over it, and where they lap. */
export function LapTable({ face }: { readonly face: SkinFace }) {
  return (
    <>
      <ScrollAcross label={`Laps of the ${face.face}`}>
        <table className="figures" data-testid="laps">
          <thead>
            <tr>
              {["joint", "ply", "first", "over it", "on", "beyond the joint, mm", "note"].map((word) => (
                <th key={word} scope="col">
                  {word}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lapRows(face).map(({ joint, ply, first, over, lies, fromTo, note }) => (
              <tr key={`${joint} ${ply}`}>
                {[joint, ply, first, over, lies, fromTo, note].map((words, index) => (
                  <td key={index}>{words}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollAcross>
      {stackedWords(face).map((words) => (
        <p key={words}>{words}</p>
      ))}
    </>
  );
}
