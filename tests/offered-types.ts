import ts from 'typescript';

/** What a package exports, according to its declarations. */
export interface Offered {
  /** `face name`, such as `flight Plan`, of every export. */
  readonly names: readonly string[];
  /** Types of the package that the declaration of an export mentions, and that nobody can import. */
  readonly unnamed: readonly string[];
  /** Exported functions, classes and constants without a comment that says what they are. */
  readonly undescribed: readonly string[];
}

/**
 * Reads the declarations of a package's entries, by their names. What an exported declaration mentions must be exported by
 * one of the entries, too; `inPackage` says which files are the package's own.
 */
export function offeredTypes(
  faces: Readonly<Record<string, string>>,
  inPackage: (file: string) => boolean,
): Offered {
  const program = ts.createProgram(Object.values(faces), {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
  });
  const checker = program.getTypeChecker();
  const real = (symbol: ts.Symbol) =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const offered = Object.entries(faces).flatMap(([face, path]) => {
    const module = checker.getSymbolAtLocation(program.getSourceFile(path)!)!;
    return checker.getExportsOfModule(module).map((each) => ({ face, name: each.name, symbol: real(each) }));
  });
  const known = new Set(offered.map(({ symbol }) => symbol));
  const isOwn = (symbol: ts.Symbol) =>
    symbol.declarations?.some((each) => inPackage(each.getSourceFile().fileName)) ?? false;
  const unnamed = new Set<string>();
  for (const { face, name, symbol } of offered) {
    const check = (mentioned: ts.Symbol | undefined) => {
      if (!mentioned || mentioned.flags & ts.SymbolFlags.TypeParameter) return;
      const found = real(mentioned);
      if (!isOwn(found) || known.has(found)) return;
      const declaration = found.declarations![0]!;
      // An alias that a module keeps to itself: what it stands for is examined instead.
      if (ts.isTypeAliasDeclaration(declaration) && !isExported(declaration))
        mentionsIn(declaration, checker, check);
      else unnamed.add(`${face} ${name}: ${found.name}`);
    };
    for (const declaration of symbol.declarations ?? [])
      if (inPackage(declaration.getSourceFile().fileName)) mentionsIn(declaration, checker, check);
  }
  const undescribed = offered.filter(
    ({ symbol }) =>
      symbol.flags & ts.SymbolFlags.Value && symbol.getDocumentationComment(checker).length === 0,
  );
  return {
    names: offered.map(({ face, name }) => `${face} ${name}`),
    unnamed: [...unnamed],
    undescribed: undescribed.map(({ face, name }) => `${face} ${name}`),
  };
}

function isExported(declaration: ts.TypeAliasDeclaration): boolean {
  return declaration.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;
}

/** Every type that is named in a declaration. A type that is `typeof` some constant is written out first. */
function mentionsIn(
  declaration: ts.Declaration,
  checker: ts.TypeChecker,
  found: (symbol: ts.Symbol | undefined) => void,
): void {
  const walk = (node: ts.Node): void => {
    if (ts.isTypeReferenceNode(node)) found(checker.getSymbolAtLocation(node.typeName));
    else if (ts.isExpressionWithTypeArguments(node)) found(checker.getSymbolAtLocation(node.expression));
    else if (ts.isImportTypeNode(node) && node.qualifier) found(checker.getSymbolAtLocation(node.qualifier));
    if (ts.isTypeQueryNode(node)) writtenOut(checker.getTypeAtLocation(declaration), checker, found);
    else ts.forEachChild(node, walk);
  };
  walk(declaration);
}

function writtenOut(
  whole: ts.Type,
  checker: ts.TypeChecker,
  found: (symbol: ts.Symbol | undefined) => void,
): void {
  const seen = new Set<ts.Type>();
  const walk = (type: ts.Type): void => {
    if (seen.has(type)) return;
    seen.add(type);
    if (type !== whole) found(type.aliasSymbol);
    for (const part of partsOf(type)) walk(part);
  };
  const partsOf = (type: ts.Type): readonly ts.Type[] => {
    if (type.isUnionOrIntersection()) return type.types;
    if (type.symbol && type.symbol.flags & (ts.SymbolFlags.Interface | ts.SymbolFlags.Class)) {
      found(type.symbol);
      return checker.getTypeArguments(type as ts.TypeReference);
    }
    return type.getProperties().map((property) => checker.getTypeOfSymbol(property));
  };
  walk(whole);
}
