// The prebuilt file has no typings of its own; it exports what the package does.
declare module '@vscode/webview-ui-toolkit/dist/toolkit.min.js' {
  export {
    provideVSCodeDesignSystem,
    vsCodeButton,
    vsCodeCheckbox,
    vsCodeDropdown,
    vsCodeOption,
    vsCodeTextField,
  } from '@vscode/webview-ui-toolkit';
}
