/** The editor's settings for pictures: one file, its text, and nothing around it that isn't ours. */

/** The editor's own themes, by the names used for the pictures' files. */
export const themes = {
  light: "Light Modern",
  dark: "Dark Modern",
  "high-contrast": "Default High Contrast",
} as const;

/** The name of a theme that pictures are taken in. */
export type ThemeName = keyof typeof themes;

/** Every theme's name. */
export const themeNames = Object.keys(themes) as ThemeName[];

/** The settings of a profile that shows one file and nothing else. */
export const photographSettings = {
  "window.autoDetectColorScheme": false,
  "workbench.startupEditor": "none",
  "workbench.activityBar.location": "hidden",
  "workbench.statusBar.visible": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.layoutControl.enabled": false,
  "workbench.editor.editorActionsLocation": "hidden",
  "workbench.tips.enabled": false,
  "window.commandCenter": false,
  "window.menuBarVisibility": "hidden",
  "chat.disableAIFeatures": true,
  "breadcrumbs.enabled": false,
  "editor.minimap.enabled": false,
  "editor.fontFamily": "DejaVu Sans Mono, monospace",
  "editor.fontSize": 13,
  "editor.hover.delay": 100,
  "editor.cursorBlinking": "solid",
  "editor.occurrencesHighlight": "off",
  "editor.renderLineHighlight": "none",
  "editor.scrollbar.vertical": "hidden",
  "editor.scrollbar.horizontal": "hidden",
  "editor.overviewRulerBorder": false,
  "editor.hideCursorInOverviewRuler": true,
  "editor.stickyScroll.enabled": false,
  "telemetry.telemetryLevel": "off",
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "git.enabled": false,
  "update.showReleaseNotes": false,
} as const;
