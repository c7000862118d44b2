/** Turns of phrase that are refused in some layer, each with the reason that the author will read. */

/** For every file of the program and its tests. */
export const everywhere = [
  {
    selector: 'CatchClause > BlockStatement[body.length=0]',
    message: 'An error is caught to add meaning to it, never to lose it.',
  },
];

/** For the program's own layers; configuration files have to export by default. */
export const inTheProgram = [
  { selector: 'ExportDefaultDeclaration', message: 'Exports have names.' },
  { selector: 'ExportSpecifier[exported.name="default"]', message: 'Exports have names.' },
  {
    selector: ':matches(Program, ExportNamedDeclaration) > TSInterfaceDeclaration',
    message: 'Shapes are types; an interface can be added to from afar.',
  },
];

const pure = 'This layer computes the same from the same: hand it in.';

/** For shared-types and analysis: no clock, no chance. */
export const inPureLayers = [
  {
    selector: 'MemberExpression[object.name="Date"][property.name="now"]',
    message: `No clock here. ${pure}`,
  },
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: `No clock here. ${pure}` },
  { selector: 'CallExpression[callee.name="Date"]', message: `No clock here. ${pure}` },
  {
    selector: 'MemberExpression[object.name="Math"][property.name="random"]',
    message: `No chance here. ${pure}`,
  },
];

const sql = 'SQL lives in electron/database/, in repositories.';
const database = '/(^|[a-z])(db|database|connection|library)$/i';

/** For electron outside electron/database. */
export const outsideTheDatabase = [
  { selector: 'CallExpression[callee.property.name="prepare"][arguments.length>0]', message: sql },
  ...['object.name', 'object.property.name'].map((name) => ({
    selector: `CallExpression[callee.property.name=/^(exec|pragma)$/][callee.${name}=${database}]`,
    message: sql,
  })),
  ...['Literal[value=', 'TemplateElement[value.raw='].map((start) => ({
    selector: `${start}/^\\s*(SELECT\\s|INSERT INTO\\s|UPDATE\\s+\\w+\\s+SET\\s|DELETE FROM\\s|CREATE\\s+(TABLE|INDEX|TRIGGER)|PRAGMA\\s|WITH\\s+\\w+\\s+AS\\s*\\()/]`,
    message: sql,
  })),
];

/** For tests: what cannot fail for the right reason, or fails for the wrong one. */
export const inTests = [
  {
    selector:
      'CallExpression[callee.object.name="vi"][callee.property.name=/^(mock|doMock|unstable_mockModule)$/]',
    message: 'Our own modules are not mocked: test them as they are.',
  },
  {
    selector: 'CallExpression[callee.property.name=/^toMatch(Inline|File)?Snapshot$/]',
    message: 'Nobody reads snapshots: assert what matters and name its source.',
  },
  {
    selector: 'CallExpression[callee.property.name="waitForTimeout"]',
    message: 'Wait for the thing, not for a time.',
  },
];
