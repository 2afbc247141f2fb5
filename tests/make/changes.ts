import * as ast from "typescript/unstable/ast";

/** Text between two offsets of a file, and what to put there. */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

const { SyntaxKind: kinds } = ast;
const otherOperators = new Map<ast.SyntaxKind, string>([
  [kinds.LessThanToken, "<="],
  [kinds.LessThanEqualsToken, "<"],
  [kinds.GreaterThanToken, ">="],
  [kinds.GreaterThanEqualsToken, ">"],
  [kinds.EqualsEqualsEqualsToken, "!=="],
  [kinds.ExclamationEqualsEqualsToken, "==="],
  [kinds.MinusToken, "+"],
  [kinds.AsteriskToken, "/"],
  [kinds.SlashToken, "*"],
]);
const joining = [kinds.AmpersandAmpersandToken, kinds.BarBarToken];
/** Calls that may be left out of a chain. */
const steps = new Set(["filter", "toSorted", "toReversed", "trim", "toLowerCase", "toUpperCase", "slice"]);
/** In a regular expression: its anchors, edges of words, and how often something may come. */
const looseners = /(?<=[/|(])\^|(?<!\\)\$(?=[/|)])|\\b|\{\d+(?:,\d+)?\}/g;

/** Whether a node is what an example of a check is made of. Examples are tests: a change of one is no change of logic. */
function isExample(node: ast.Node): boolean {
  return ast.isPropertyAssignment(node) && ast.isIdentifier(node.name) && node.name.text === "given";
}

/** Every change that is tried on one file. */
export function changesOf(file: ast.SourceFile): Change[] {
  const changes: Change[] = [];
  const { text } = file;
  const put = (node: ast.Node, as: string): void => {
    changes.push({ from: node.getStart(file), to: node.end, text: as });
  };
  const leaveOut = (from: number, to: number): void => {
    changes.push({ from, to, text: "" });
  };
  const decides = (node: ast.Node): void => {
    put(node, "true");
    put(node, "false");
  };
  const visit = (node: ast.Node): undefined => {
    if (ast.isIfStatement(node)) decides(node.expression);
    else if (ast.isConditionalExpression(node)) decides(node.condition);
    else if (ast.isRegularExpressionLiteral(node))
      for (const { index, 0: piece } of node.text.matchAll(looseners))
        changes.push({
          from: node.getStart(file) + index,
          to: node.getStart(file) + index + piece.length,
          text: piece.startsWith("{") ? piece.replace(/\d+(?=\})/, (most) => `${Number(most) + 1}`) : "",
        });
    else if (ast.isNumericLiteral(node)) put(node, `${Number(node.text) + 1}`);
    else if (node.kind === kinds.TrueKeyword && !ast.isLiteralTypeNode(node.parent)) put(node, "false");
    else if (node.kind === kinds.FalseKeyword && !ast.isLiteralTypeNode(node.parent)) put(node, "true");
    else if (ast.isPrefixUnaryExpression(node) && node.operator === kinds.ExclamationToken)
      put(node, node.operand.getText(file));
    else if (ast.isBinaryExpression(node)) {
      const other = otherOperators.get(node.operatorToken.kind);
      if (other !== undefined) put(node.operatorToken, other);
      if (joining.includes(node.operatorToken.kind)) {
        leaveOut(node.left.getStart(file), node.right.getStart(file));
        leaveOut(node.left.end, node.end);
      }
    } else if (
      ast.isCallExpression(node) &&
      ast.isPropertyAccessExpression(node.expression) &&
      steps.has(node.expression.name.text)
    )
      leaveOut(node.expression.expression.end, node.end);
    if (!ast.isTypeNode(node) && !isExample(node)) node.forEachChild(visit);
  };
  visit(file);
  return changes.filter(({ from, to, text: as }) => text.slice(from, to) !== as);
}
