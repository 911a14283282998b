import {
  provideVSCodeDesignSystem,
  vsCodeButton,
  vsCodeCheckbox,
  vsCodeDropdown,
  vsCodeOption,
} from '@vscode/webview-ui-toolkit/dist/toolkit.min.js';

/**
 * Registers the elements of the UI kit that the page dresses itself with. The kit's own file must
 * be imported by name: it is marked free of side effects and a bare import would be dropped.
 */
export function registerControls(): void {
  provideVSCodeDesignSystem().register(
    vsCodeButton(),
    vsCodeCheckbox(),
    vsCodeDropdown(),
    vsCodeOption(),
  );
}
